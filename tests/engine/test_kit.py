"""The kit is the best there is: against trying every set, against a solver, and against bringing one part only."""

from dataclasses import replace
from functools import cache
from itertools import chain, combinations
from random import Random

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from tests.builders import ANYWHERE, electric_oven
from tests.engine.simulating import check_of
from triage.authoring.simulated_users import draw_user
from triage.engine.belief import infer_belief
from triage.engine.kit import best_parts, completion_probability, kit_for, needed_part_sets, part_sets_for
from triage.engine.model import compile_model
from triage.engine.pack import Band

PARTS = "abcdefg"
ALMOST = 1e-8
CHECKS = 240
# 161 field-service organisations: mean 77 %, best 88 %, worst 60 % of jobs finished at the first visit (seen, as
# reported by the trade press). Parts are missing at about half of the visits that fail (a 2013 guide, second-hand).
FIELD_MEAN, FIELD_BEST = 0.77, 0.88

needs = st.dictionaries(
    st.frozensets(st.sampled_from(PARTS), max_size=4), st.floats(0.001, 1.0), min_size=1, max_size=12
)
costs = st.fixed_dictionaries({part: st.floats(0.0, 0.5) for part in PARTS})


def net(kit, wanted, carry):
    return completion_probability(frozenset(kit), wanted) - sum(carry[part] for part in kit)


@given(needs, costs)
def test_no_other_set_of_parts_is_better(wanted, carry):
    every = chain.from_iterable(combinations(PARTS, n) for n in range(len(PARTS) + 1))
    best = max(net(kit, wanted, carry) for kit in every)
    assert net(best_parts(wanted, carry), wanted, carry) == pytest.approx(best, abs=ALMOST)


def solved_by_milp(wanted, carry):
    """The best net value by SciPy's integer programming (HiGHS): one variable per part, one per set of needs."""
    parts, sets = sorted(carry), list(wanted)
    worth = np.array([carry[part] for part in parts] + [-wanted[need] for need in sets])
    rows = [(len(parts) + i, parts.index(part)) for i, need in enumerate(sets) for part in need]
    table = np.zeros((len(rows), len(worth)))
    for row, (need, part) in enumerate(rows):
        table[row, need], table[row, part] = 1, -1
    found = milp(worth, constraints=LinearConstraint(table, ub=0), bounds=Bounds(0, 1), integrality=np.ones(len(worth)))
    return -found.fun


@pytest.mark.parametrize("answers", [{}, {"complaint": "no-heat"}, {"complaint": "trips"}, {"complaint": "too-hot"}])
def test_an_integer_programme_over_the_whole_oven_finds_no_better_kit(answers):
    pack = electric_oven()
    wanted = needed_part_sets(infer_belief(compile_model(pack, ANYWHERE), answers), "technician")
    carry = {part.id: part.carrying_cost for part in pack.parts.values()}
    found = best_parts(wanted, carry)
    assert net(found, wanted, carry) == pytest.approx(solved_by_milp(wanted, carry), abs=1e-6)


def test_two_parts_that_are_only_worth_it_together_come_together():
    """Either alone finishes nothing, so choosing part by part would leave both at home."""
    both = frozenset({"a", "b"})
    assert best_parts({both: 0.5}, {"a": 0.2, "b": 0.2}) == both
    assert best_parts({both: 0.5}, {"a": 0.3, "b": 0.3}) == frozenset()


def test_a_part_paid_for_by_one_cause_also_serves_another():
    wanted = {frozenset("a"): 0.1, frozenset("ab"): 0.1}
    assert best_parts(wanted, {"a": 0.15, "b": 0.04}) == frozenset("ab")


def test_two_faults_at_once_need_the_parts_of_both():
    pack = electric_oven()
    needed = part_sets_for(pack, ("fan-element-open", "hinge-worn"), "technician")
    assert sum(needed.values()) == pytest.approx(1.0)
    assert all({"ring-element", "hinge-pair"} <= parts for parts in needed)


@pytest.mark.parametrize("fault", ["cooker-switch-failed", "neutral-fault", "other-not-listed"])
def test_a_technician_finishes_neither_an_electricians_job_nor_one_nobody_knows(fault):
    assert part_sets_for(electric_oven(), (fault,), "technician") == {}


def test_a_visit_that_finds_a_setting_needs_no_part():
    assert part_sets_for(electric_oven(), ("programmer-not-set",), "technician") == {frozenset(): 1.0}


def test_the_gain_of_a_part_is_what_the_chance_falls_by_without_it():
    belief = belief_after(complaint="no-heat")
    wanted, kit = needed_part_sets(belief, "technician"), kit_for(belief, "technician")
    chosen = frozenset(carried.part for carried in kit.parts)
    assert kit.completion_probability == pytest.approx(completion_probability(chosen, wanted))
    for carried in kit.parts:
        assert carried.gain == pytest.approx(
            kit.completion_probability - completion_probability(chosen - {carried.part}, wanted)
        )
    assert [c.gain for c in kit.parts] == sorted((c.gain for c in kit.parts), reverse=True)
    assert kit.completion_probability <= kit.max_probability <= 1


def test_what_costs_nothing_to_carry_leaves_no_chance_unused():
    pack = electric_oven()
    free = replace(pack, parts={name: replace(part, carrying_cost=0.0) for name, part in pack.parts.items()})
    kit = kit_for(infer_belief(compile_model(free, ANYWHERE), {}), "technician")
    assert kit.completion_probability == pytest.approx(kit.max_probability)


def belief_after(**answers):
    return infer_belief(compile_model(electric_oven(), ANYWHERE), answers)


@cache
def visits():
    """For made-up households whose check ends in a technician's visit: whether the best kit, and the likeliest part
    alone, was enough, the chance that was promised, and the chance with every part there is."""
    pack, dice = electric_oven(), Random(7)
    model = compile_model(pack, ANYWHERE)
    found = []
    for _ in range(CHECKS):
        household = draw_user(model, dice)
        check = check_of(household, pack, ANYWHERE).last
        step = check.step
        leading = pack.faults[step.verdict.causes[0].fault]
        if step.verdict.band not in (Band.QUALIFIED, Band.MAKE_SAFE) or leading.performed_by != "technician":
            continue
        kit = kit_for(check.belief, "technician")
        brought = frozenset(carried.part for carried in kit.parts)
        alone = max(part_sets_for(pack, (leading.id,), "technician").items(), key=lambda way: way[1], default=((), 0))[
            0
        ]
        ways = part_sets_for(pack, household.faults, "technician")
        needed = dice.choices(list(ways), list(ways.values()))[0] if ways else frozenset({"nobody knows"})
        found.append((needed <= brought, needed <= frozenset(alone), kit.completion_probability))
    return found


def test_the_kit_finishes_more_visits_than_the_likeliest_part_alone():
    best = np.mean([brought for brought, _, _ in visits()])
    alone = np.mean([alone for _, alone, _ in visits()])
    assert best >= alone + 0.15


def test_the_chance_that_is_promised_is_the_share_of_visits_that_are_finished():
    done = np.array([brought for brought, _, _ in visits()], float)
    promised = np.array([chance for _, _, chance in visits()])
    error = np.sqrt((promised * (1 - promised)).sum()) / len(promised)
    assert abs(done.mean() - promised.mean()) < 3 * error


def test_the_kit_stands_above_the_published_best_and_the_likeliest_part_alone_below_the_published_mean():
    """Not the same measure: these visits fail for want of a part only, those of the survey for every reason."""
    assert np.mean([alone for _, alone, _ in visits()]) < FIELD_MEAN
    assert np.mean([brought for brought, _, _ in visits()]) > FIELD_BEST
