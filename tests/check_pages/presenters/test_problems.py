"""What could not be read is said in plain sentences, a few of them."""

import pytest

from triage.check_pages.presenters.problems import MOST_SHOWN, problem_sentences
from triage.engine import AnswerProblem
from triage.knowledge.library import library

TEXTS = library().words("gb-eng")


@pytest.mark.parametrize(
    ("problem", "sentence"),
    [
        (AnswerProblem("unknown-question", "zap"), "We did not know the question “zap”. It was left out."),
        (
            AnswerProblem("unknown-answer", "lamp-state", "blue"),
            "We did not know the answer “blue” to “Oven light”. It was left out.",
        ),
        (
            AnswerProblem("contradiction", "lamp-state"),
            "“Oven light” had two different answers. The safer one is used, or it is asked again.",
        ),
        (
            AnswerProblem("retired", "lamp-state"),
            "The question “Oven light” is asked in another way now. It may be asked again.",
        ),
        (
            AnswerProblem("out-of-place", "lamp-state", "lamp-works"),
            "“Oven light” does not go with the other answers. It was left out.",
        ),
        (
            AnswerProblem("unreadable-reading", "meter-power", "f0", "missing"),
            "The figures given for “Power drawn” could not be used. Please give them again.",
        ),
        (AnswerProblem("too-many", ""), "There were more answers than we can read. The first ones are used."),
    ],
)
def test_each_problem_has_its_sentence(problem, sentence):
    assert problem_sentences(TEXTS, [problem]) == [sentence]


def test_the_same_sentence_is_said_once_and_many_are_counted():
    many = [AnswerProblem("unknown-question", f"q{n}") for n in range(30)]
    told = problem_sentences(TEXTS, [*many, *many])
    assert len(told) == MOST_SHOWN + 1
    assert told[-1] == "26 more answers could not be used either."
