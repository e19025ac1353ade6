"""Questions and answers in the words a person saw, and the list of what was answered so far."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from triage.check_pages.links import Links
from triage.engine import SCREEN
from triage.jobsheet.wording import DID, answer_label, question_label
from triage.knowledge.texts import Texts

__all__ = ["DID", "answer_label", "answers_so_far", "question_label"]


@dataclass(frozen=True)
class Answered:
    """One answer already given, and the address of the check without it."""

    question: str
    answer: str
    change_href: str


def answers_so_far(
    texts: Texts, answers: Mapping[str, str], links: Links, only: Iterable[str] | None = None
) -> list[Answered]:
    """Every answer that holds, or those in `only`, each with the way to answer it again."""
    wanted = answers if only is None else set(only)
    return [
        Answered(
            question_label(texts, observation),
            answer_label(texts, observation, answer),
            links.danger() if observation == SCREEN else links.step(without=[observation]),
        )
        for observation, answer in answers.items()
        if observation in wanted
    ]
