"""Made-up people: as common as the model thinks, true to one story, and never claiming a danger by slip."""

from collections import Counter
from random import Random

import pytest
from scipy.stats import chisquare

from tests.builders import ANYWHERE, make_pack
from triage.authoring.simulated_users import AnswerModel, draw_user
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, compile_model, infer_belief

SURE = {"memory": 0.0, "look": 0.0, "trial": 0.0}
PEOPLE = 3000


@pytest.fixture(scope="module")
def model():
    return compile_model(make_pack(), ANYWHERE)


def people(model, habits, number=PEOPLE, seed=11):
    dice = Random(seed)
    return [draw_user(model, dice, habits) for _ in range(number)]


def test_faults_are_as_common_as_the_model_says(model):
    drawn = Counter(person.hypothesis for person in people(model, AnswerModel()))
    chances = infer_belief(model, {}).probabilities
    seen = [drawn[hypothesis] for hypothesis in model.hypotheses]
    assert chisquare(seen, [PEOPLE * chance for chance in chances]).pvalue > 1e-3


def test_nobody_has_a_fault_that_their_kind_of_oven_cannot_have(model):
    for person in people(model, AnswerModel(), 500):
        for fault in person.faults:
            needs = model.pack.faults[fault].requires_variant
            assert all(person.variants[variant] in allowed for variant, allowed in needs.items())


def test_asked_twice_they_say_the_same(model):
    for person in people(model, AnswerModel(error_rate=0.5, unknown_rate=0.3), 50):
        assert [person.answer("heats") for _ in range(5)] == [person.answer("heats")] * 5


def test_as_many_cannot_tell_as_the_habits_say(model):
    habits = AnswerModel(0.5, SURE | {"memory": 0.2}, unknown_rate=0.25)
    drawn = people(model, habits)
    unsure = {name: sum(p.answer(name) == CANT_TELL for p in drawn) / PEOPLE for name in ("heats", "control")}
    assert unsure == pytest.approx({"heats": 1 - 0.8 * 0.75, "control": 1 - 0.5 * 0.75}, abs=0.04)


def test_as_many_are_wrong_as_the_habits_say(model):
    wrong = people(model, AnswerModel(0.0, SURE, error_rate=0.3))
    missed = sum(person.answer("control") != person.variants["control"] for person in wrong)
    assert missed / PEOPLE == pytest.approx(0.3, abs=0.04)


def test_a_slip_may_miss_a_danger_and_never_claims_one(model):
    ticked = {
        share: sum(p.danger_page() != (SCREEN, NONE_OF_THESE) for p in people(model, AnswerModel(0.0, SURE, share)))
        for share in (0.0, 1.0)
    }
    assert ticked[0.0] > 50
    assert ticked[1.0] == 0


def test_the_beginning_is_the_start_page_and_the_danger_page(model):
    (person,) = people(model, AnswerModel(), 1)
    assert person.opening_answers() == [("complaint", person.answer("complaint")), person.danger_page()]
    assert person.family == person.hypothesis.family
