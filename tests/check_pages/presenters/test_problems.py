"""What could not be read is said in plain sentences, a few of them."""

import pytest

from triage.check_pages.presenters.problems import MAX_SHOWN, problem_notes
from triage.engine import AnswerProblem
from triage.jobsheet.sentences import sentence
from triage.knowledge.library import library

TEXTS = library().texts_for("gb-eng")


@pytest.mark.parametrize(
    ("problem", "words"),
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
def test_each_problem_has_its_sentence(problem, words):
    (note,) = problem_notes(TEXTS, [problem])
    assert sentence("problem", problem=note) == words


def test_the_same_sentence_is_said_once_and_many_are_counted():
    many = [AnswerProblem("unknown-question", f"q{n}") for n in range(30)]
    notes = problem_notes(TEXTS, [*many, *many])
    assert len(notes) == MAX_SHOWN + 1
    assert sentence("problem", problem=notes[-1]) == "26 more answers could not be used either."


def test_two_problems_with_one_sentence_are_one():
    """What the sentence does not name does not tell them apart."""
    pair = [AnswerProblem("contradiction", "lamp-state", answer) for answer in ("lamp-works", "lamp-dead")]
    assert len(problem_notes(TEXTS, pair)) == 1
    assert len(problem_notes(TEXTS, [AnswerProblem("too-many", "a"), AnswerProblem("too-many", "b")])) == 1
