"""A disturbed pack: every number off within its limit, chances still chances, the impossible still impossible."""

from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import ANYWHERE, electric_oven, make_pack
from triage.authoring.perturbation import perturbed
from triage.engine import compile_model

REACH = 1 + 1e-9


@given(st.integers(), st.floats(1.0, 20.0))
def test_rates_stay_within_the_factor_and_chances_add_up(seed, off_by):
    pack = make_pack()
    off = perturbed(pack, Random(seed), off_by)
    for name, fault in pack.faults.items():
        assert 1 / off_by / REACH <= off.faults[name].calls_per_1000 / fault.calls_per_1000 <= off_by * REACH
    rows = [effect.levels for fault in off.faults.values() for effect in fault.effects]
    rows += [row for asked in off.observations.values() for row in asked.answer_probabilities]
    rows += [condition.baseline for condition in off.conditions.values()]
    assert [sum(row) for row in rows] == pytest.approx([1.0] * len(rows))


def test_odds_stay_within_the_square_of_the_factor():
    before, after = make_pack().observations["heats"].answer_probabilities[0], None
    for seed in range(50):
        after = perturbed(make_pack(), Random(seed), 3.0).observations["heats"].answer_probabilities[0]
        moved = (after[0] / after[1]) / (before[0] / before[1])
        assert 1 / 9 / REACH <= moved <= 9 * REACH
    assert after != before


def test_what_is_impossible_or_certain_stays_so():
    off = perturbed(make_pack(), Random(1), 5.0)
    assert off.observations["control"].answer_probabilities == ((1.0, 0.0), (0.0, 1.0))
    assert off.faults["thermostat-drifted"].effects[1].levels[2] == 0.0


def test_off_by_nothing_is_the_pack_itself():
    off = perturbed(make_pack(), Random(1), 1.0)
    assert compile_model(off, ANYWHERE).prior == pytest.approx(compile_model(make_pack(), ANYWHERE).prior)


def test_the_same_dice_disturb_alike_and_others_do_not():
    one, same, other = (perturbed(electric_oven(), Random(seed), 2.0) for seed in (1, 1, 2))
    calls = [[fault.calls_per_1000 for fault in pack.faults.values()] for pack in (one, same, other)]
    assert calls[0] == calls[1] != calls[2]
