"""What could not be used of an address. Its sentences stand in `templates/triage/sentences/problem.txt`."""

from collections.abc import Iterable
from dataclasses import dataclass

from triage.check_pages.presenters.answers import answer_label, question_label
from triage.engine import AnswerProblem
from triage.knowledge.texts import Texts

MAX_SHOWN = 4


@dataclass(frozen=True)
class ProblemNote:
    """One thing that could not be used; the kind `more` counts those not shown. What is not named in its sentence is
    empty, so equal notes are equal sentences."""

    kind: str
    question: str = ""
    answer: str = ""
    count: int = 0


def problem_notes(texts: Texts, problems: Iterable[AnswerProblem]) -> list[ProblemNote]:
    """Each once, the first few of them, and how many more there were."""
    notes = list(dict.fromkeys(_note(texts, problem) for problem in problems))
    more = len(notes) - MAX_SHOWN
    return notes if more <= 1 else [*notes[:MAX_SHOWN], ProblemNote("more", count=more)]


def _note(texts: Texts, problem: AnswerProblem) -> ProblemNote:
    if problem.kind == "too-many":
        return ProblemNote(problem.kind)
    answer = answer_label(texts, problem.observation, problem.answer) if problem.kind == "unknown-answer" else ""
    return ProblemNote(problem.kind, question_label(texts, problem.observation), answer)
