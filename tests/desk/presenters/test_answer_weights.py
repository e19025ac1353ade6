"""An answer's weight: which side, how long, and the same in words."""

import pytest

from triage.desk.presenters.answer_weights import HALF_WIDTH, weight_of


def weighed(decibans, question="Oven fan"):
    told = {"observation": "fan", "answer": "no", "question": question, "text": "Off", "decibans": decibans}
    weight = weight_of(told)
    return weight.side, weight.left, weight.width, weight.figure


@pytest.mark.parametrize(
    ("decibans", "bar"),
    [
        (10.0, ("to", HALF_WIDTH, 30, "+10.0 points to it")),
        (-10.0, ("away", HALF_WIDTH - 30, 30, "−10.0 points away")),
        (20.0, ("to", HALF_WIDTH, HALF_WIDTH, "+20.0 points to it")),
        (64.2, ("to", HALF_WIDTH, HALF_WIDTH, "+64.2 points to it")),
        (-300.0, ("away", 0, HALF_WIDTH, "−300.0 points away")),
        (0.06, ("to", HALF_WIDTH, 1, "+0.1 points to it")),
        (0.04, ("none", HALF_WIDTH, 0, "0, says nothing")),
        (0.0, ("none", HALF_WIDTH, 0, "0, says nothing")),
        (None, ("none", HALF_WIDTH, 0, "not weighed")),
    ],
)
def test_a_weight_is_drawn_and_said(decibans, bar):
    assert weighed(decibans) == bar


@pytest.mark.parametrize(("question", "shown"), [("Oven fan", "Oven fan:"), ("Is it off?", "Is it off?")])
def test_a_question_keeps_its_own_mark(question, shown):
    told = {"observation": "fan", "answer": "no", "question": question, "text": "Off", "decibans": None}
    assert weight_of(told).question == shown
