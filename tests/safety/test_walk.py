"""Every state near the start, in every region, and thousands of whole checks: no rule is broken on any step.

What the walks cover, and why that suffices, stands in `walking.py`.
"""

from tests.safety.places import region_classes
from tests.safety.result import all_together
from tests.safety.walking import openings, region_named, walk_all, walk_at_random, walk_from, without_explanations
from triage.knowledge.library import library

DEPTH, DEPTH_ELSEWHERE = 3, 1
CHECKS = 3000


def test_each_region_is_in_one_class_of_regions_that_the_engine_cannot_tell_apart():
    members = [region for found in region_classes() for region in found.members]
    assert sorted(members) == sorted(library().regions)
    for found in region_classes():
        for region in map(region_named, found.members):
            assert (region.shares, region.removed_tasks) == (found.region.shares, found.region.removed_tasks)


def test_every_state_within_three_answers_keeps_every_rule_where_most_regions_are_alike(record_property):
    found = walk_all(region_classes()[0].region.id, DEPTH)
    record_property("states", found.states)
    assert found.violations == ""
    assert found.states > 15_000
    assert set(found.kinds) == {"Question", "Emergency", "Result", "OutOfScope"}


def test_every_state_within_one_answer_keeps_every_rule_in_every_other_region(record_property):
    others = region_classes()[1:]
    jobs = [
        (found.region.id, opening, DEPTH_ELSEWHERE, False) for found in others for opening in openings(library().pack)
    ]
    found = all_together(walk_from, jobs, conditions=without_explanations)
    record_property("states", found.states)
    assert found.violations == ""
    assert found.states > 900 * len(others)


def test_whole_checks_keep_every_rule_to_their_end_in_every_region(record_property):
    each = -(-CHECKS // len(region_classes()))
    jobs = [(found.region.id, each, seed) for seed, found in enumerate(region_classes())]
    found = all_together(walk_at_random, jobs, conditions=without_explanations)
    record_property("states", found.states)
    assert found.violations == ""
    assert found.kinds["Result"] + found.kinds["Emergency"] >= CHECKS
