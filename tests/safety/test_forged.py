"""A hundred thousand trails that nobody could give, and some that are far too long: no rule is broken on any."""

from itertools import product
from random import Random

from tests.safety.browsing import ending_answers
from tests.safety.forging import forge, forged_trail, pools_of, with_retired_questions
from tests.safety.invariants import band_now, danger_ends_the_check, more_danger_never_lowers
from tests.safety.places import class_named, region_classes
from tests.safety.result import all_together
from tests.safety.walking import without_explanations
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Band, Emergency, parse_answers, run_check
from triage.engine.answers import MAX_ANSWERS

TRAILS = 100_000
SEED = 20_260


def test_no_forged_trail_breaks_a_rule_in_any_region(record_property):
    each = -(-TRAILS // len(region_classes()))
    jobs = [(found.region.id, each, SEED + number) for number, found in enumerate(region_classes())]
    found = all_together(forge, jobs, conditions=without_explanations)
    record_property("states", found.states)
    assert found.violations == ""
    assert found.states >= TRAILS
    assert set(found.kinds) == {"Question", "Emergency", "Result", "OutOfScope"}


def test_the_forged_trails_hold_every_kind_of_mistake_and_every_danger():
    pack, dice = with_retired_questions(), Random(SEED)
    trails = [forged_trail(pack, dice, pools_of(pack)) for _ in range(4000)]
    kinds = {problem.kind for pairs in trails for problem in parse_answers(pack, pairs).problems}
    assert kinds >= {"unknown-question", "unknown-answer", "contradiction", "retired", "out-of-place"}
    assert {pair for pairs in trails for pair in pairs} >= set(ending_answers(pack))


def test_a_red_flag_counts_however_much_stands_before_it():
    pack, region = with_retired_questions(), class_named("gb-eng").region
    before = [("no-such-question", str(number)) for number in range(2 * MAX_ANSWERS)]
    told = [(name, CANT_TELL) for name in pack.observations]
    for sign in ending_answers(pack):
        for pairs in ([*before, sign], [*told, *before[:MAX_ANSWERS], sign]):
            check = run_check(pack, region, pairs)
            assert isinstance(check.step, Emergency), f"{sign} after {len(pairs) - 1} pairs"
            assert danger_ends_the_check(pack, region, pairs, check) == []


def test_a_caution_never_lowers_the_band_by_answers_that_count_only_with_it():
    pack, region = with_retired_questions(), class_named("gb-eng").region
    about_trips = [pack.observations[name].options for name in ("trip-timing", "trip-function", "trip-alone")]
    tried = 0
    for timing, setting, alone in product(*about_trips):
        waiting = [("trip-timing", timing), ("trip-function", setting), ("trip-alone", alone)]
        pairs = [("complaint", "glass"), (SCREEN, NONE_OF_THESE), *waiting]
        check = run_check(pack, region, pairs)
        tried += band_now(check) is Band.MAKE_SAFE
        for device in pack.observations["trip-device"].flags:
            assert more_danger_never_lowers(pack, region, pairs, check, ("trip-device", device)) == []
    assert tried
