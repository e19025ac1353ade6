"""Answers that every level says about as often are found."""

from dataclasses import replace

import pytest

from tests.builders import ELECTRIC_OVEN, OBSERVATIONS, by_id, electric_oven, make_pack
from triage.authoring.linting.finding import Gravity, PackSource
from triage.authoring.linting.uninformative_answers import uninformative_answers, weight

PLACES = PackSource(ELECTRIC_OVEN)


def found(**changes):
    lamp = replace(OBSERVATIONS["lamp-state"], **changes)
    return uninformative_answers(make_pack(observations=OBSERVATIONS | by_id(lamp)), PLACES)


def test_a_factor_of_two_weighs_three_decibans():
    """Good, "Probability and the Weighing of Evidence" (1950): 10*log10(2) = 3.01."""
    lamp = replace(OBSERVATIONS["lamp-state"], answer_probabilities=((0.8, 0.2), (0.4, 0.6)))
    assert weight(lamp, "works") == pytest.approx(3.01, abs=0.005)


def test_what_one_level_never_says_weighs_without_bound_and_what_none_says_nothing():
    lamp = replace(OBSERVATIONS["lamp-state"], answer_probabilities=((1.0, 0.0), (0.5, 0.5)))
    assert weight(lamp, "out") == float("inf")
    assert weight(replace(lamp, answer_probabilities=((1.0, 0.0), (1.0, 0.0))), "out") == 0.0


def test_a_question_none_of_whose_answers_weighs_anything_is_a_mistake():
    (only,) = found(answer_probabilities=((0.5, 0.5), (0.5, 0.5)))
    assert (only.gravity, only.problem.where) == (Gravity.MISTAKE, "lamp-state")
    assert "every level of lamp says about the same" in only.problem.what


def test_a_single_answer_without_weight_is_a_remark():
    (only,) = found(options=("works", "out", "hums"), answer_probabilities=((0.85, 0.05, 0.1), (0.05, 0.85, 0.1)))
    assert only.gravity is Gravity.REMARK
    assert "the answer hums weighs 0.0 dB" in only.problem.what


def test_an_answer_that_raises_a_flag_has_its_own_purpose():
    says = ((0.85, 0.05, 0.1), (0.05, 0.85, 0.1))
    assert found(options=("works", "out", "hums"), answer_probabilities=says, flags={"hums": "loose-pane"}) == []


def test_the_small_pack_has_none_and_the_real_one_only_answers_for_something_else():
    assert uninformative_answers(make_pack(), PLACES) == []
    told = {(f.gravity, f.problem.where) for f in uninformative_answers(electric_oven(), PLACES)}
    assert told == {(Gravity.REMARK, "complaint"), (Gravity.REMARK, "trip-reset"), (Gravity.REMARK, "reset-effect")}
