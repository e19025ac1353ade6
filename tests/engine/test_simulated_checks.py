"""Hundreds of checks by made-up people: short for them, and right often enough to send the right repairer.

The people answer as the pack says people answer, so this measures the questions and not the pack's knowledge.
"""

from random import Random
from statistics import median

import pytest

from tests.builders import ANYWHERE, electric_oven
from tests.engine.simulating import MOST_QUESTIONS, check_of
from triage.authoring.simulated_users import draw_user
from triage.engine.check import Emergency, Result
from triage.engine.model import compile_model

CHECKS = 400
SEED = 1


@pytest.fixture(scope="module")
def outcomes():
    pack, dice = electric_oven(), Random(SEED)
    model = compile_model(pack, ANYWHERE)
    return [check_of(draw_user(model, dice), pack, ANYWHERE) for _ in range(CHECKS)]


def test_most_people_answer_no_more_than_seven_questions_and_nobody_more_than_twelve(outcomes):
    questions = [outcome.questions for outcome in outcomes if not outcome.was_dangerous]
    assert len(questions) > CHECKS / 2
    assert median(questions) <= 7
    assert max(questions) <= MOST_QUESTIONS


def test_with_every_question_used_the_right_family_leads_in_three_checks_of_four(outcomes):
    assert sum(outcome.found for outcome in outcomes) >= 0.75 * CHECKS


def test_every_check_ends_in_advice_or_in_making_it_safe(outcomes):
    assert {type(outcome.ended) for outcome in outcomes} == {Result, Emergency}


def test_nothing_these_people_say_is_set_aside_as_a_mistake(outcomes):
    assert [outcome.last.problems for outcome in outcomes if outcome.last.problems] == []


def test_the_same_people_have_the_same_checks_again():
    pack = electric_oven()
    model = compile_model(pack, ANYWHERE)
    one, other = (check_of(draw_user(model, Random(SEED)), pack, ANYWHERE) for _ in range(2))
    assert one == other
