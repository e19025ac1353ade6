"""The weight of each answer: decibans that add up, nothing for nothing, and the sign a person would expect."""

from math import log10

import pytest
from hypothesis import given, strategies

from tests.builders import ANYWHERE, electric_oven, make_pack
from tests.engine.trails import fitting_answers, some
from triage.engine.belief import infer_belief
from triage.engine.explanation import MIN_PROBABILITY, weights_of_evidence
from triage.engine.model import compile_model
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN

PACKS = {"small": make_pack(), "electric oven": electric_oven()}
SMALL = compile_model(make_pack(), ANYWHERE)


def decibans(chance):
    bounded = min(max(chance, MIN_PROBABILITY), 1 - MIN_PROBABILITY)
    return 10 * log10(bounded / (1 - bounded))


@pytest.mark.parametrize("pack", PACKS.values(), ids=PACKS)
@some
@given(wishes=strategies.data())
def test_the_weights_of_a_trail_add_up_to_the_change_of_the_log_odds(pack, wishes):
    model = compile_model(pack, ANYWHERE)
    answers = wishes.draw(fitting_answers(pack))
    before, after = infer_belief(model, {}).faults, infer_belief(model, answers).faults
    for fault, weights in weights_of_evidence(model, answers, tuple(pack.faults)).items():
        change = decibans(after[fault]) - decibans(before[fault])
        assert sum(weight.decibans for weight in weights) == pytest.approx(change, abs=1e-6)


def test_every_answer_has_its_weight_in_the_order_given():
    answers = {"lamp-state": "out", SCREEN: NONE_OF_THESE, "heats": "no-heat"}
    weights = weights_of_evidence(SMALL, answers, ("element-open", "lamp-failed"))
    assert list(weights) == ["element-open", "lamp-failed"]
    for row in weights.values():
        assert [(w.observation, w.answer) for w in row] == list(answers.items())


def test_one_answer_weighs_ten_times_the_logarithm_of_its_bayes_factor():
    """No heat from a fault that leaves none in four cases of five: worked by hand for a lamp that is out."""
    odds = SMALL.rates[5] + SMALL.rates[8]
    assert odds == 8.0 + 1.5
    chance = 0.98 * 0.95 + 0.02 * 0.03
    (weight,) = weights_of_evidence(SMALL, {"lamp-state": "out"}, ("lamp-failed",))["lamp-failed"]
    sound = infer_belief(SMALL, {}).faults
    after = infer_belief(SMALL, {"lamp-state": "out"}).faults["lamp-failed"]
    rest = after / (1 - after) / (sound["lamp-failed"] / (1 - sound["lamp-failed"]))
    assert weight.decibans == pytest.approx(10 * log10(rest))
    assert chance / rest == pytest.approx(0.95 * 0.03 + 0.05 * 0.95, abs=0.02)


def test_an_answer_points_to_what_it_fits_and_away_from_what_it_does_not():
    weights = weights_of_evidence(SMALL, {"heats": "no-heat"}, ("element-open", "normal-preheat"))
    assert weights["element-open"][0].decibans > 1.0
    assert weights["normal-preheat"][0].decibans < -1.0


def test_not_being_able_to_tell_weighs_nothing():
    for observation in SMALL.pack.observations:
        (weight,) = weights_of_evidence(SMALL, {observation: CANT_TELL}, ("element-open",))["element-open"]
        assert weight.decibans == 0.0


def test_a_fault_that_is_ruled_out_weighs_a_finite_amount():
    weights = weights_of_evidence(SMALL, {"control": "mechanical", "heats": "less"}, ("board-dead",))["board-dead"]
    assert -130.0 < weights[0].decibans < -100.0
    assert weights[1].decibans == 0.0


def test_no_answers_have_no_weights():
    assert weights_of_evidence(SMALL, {}, ("other",)) == {"other": ()}
