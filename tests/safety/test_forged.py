"""Thousands of trails that nobody could give, and some that are far too long: no rule is broken on any."""

from random import Random

from tests.safety.browsing import ending_answers
from tests.safety.forging import forge, forged_trail, pools_of, with_retired_questions
from tests.safety.invariants import danger_ends_the_check
from tests.safety.looked_at import all_together
from tests.safety.places import class_named, region_classes
from triage.engine import CANT_TELL, MakeSafe, advise, read_trail
from triage.engine.trail import MOST_ANSWERS

TRAILS = 3_000
SEED = 20_260


def test_no_forged_trail_breaks_a_rule_in_any_region():
    each = -(-TRAILS // len(region_classes()))
    jobs = [(found.region.id, each, SEED + number) for number, found in enumerate(region_classes())]
    found = all_together(forge, jobs)
    assert found.violations == ""
    assert found.states >= TRAILS
    assert set(found.kinds) == {"Ask", "MakeSafe", "Advice", "NotThis"}


def test_the_forged_trails_hold_every_kind_of_mistake_and_every_danger():
    pack, dice = with_retired_questions(), Random(SEED)
    trails = [forged_trail(pack, dice, pools_of(pack)) for _ in range(4000)]
    kinds = {problem.kind for pairs in trails for problem in read_trail(pack, pairs).problems}
    assert kinds >= {"unknown-question", "unknown-answer", "contradiction", "retired", "out-of-place"}
    assert {pair for pairs in trails for pair in pairs} >= set(ending_answers(pack))


def test_a_red_flag_counts_however_much_stands_before_it():
    pack, region = with_retired_questions(), class_named("gb-eng").region
    before = [("no-such-question", str(number)) for number in range(2 * MOST_ANSWERS)]
    told = [(name, CANT_TELL) for name in pack.observations]
    for sign in ending_answers(pack):
        for pairs in ([*before, sign], [*told, *before[:MOST_ANSWERS], sign]):
            step = advise(pack, region, pairs)
            assert isinstance(step, MakeSafe), f"{sign} after {len(pairs) - 1} pairs"
            assert danger_ends_the_check(pack, region, pairs, step) == []
