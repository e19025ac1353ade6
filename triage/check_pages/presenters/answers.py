"""Questions and answers in the words a person saw, and the list of what was answered so far."""

from collections.abc import Iterable

from triage.check_pages.query import Links
from triage.check_pages.view_models import Answered
from triage.engine import SCREEN, ParsedAnswers
from triage.jobsheet.wording import DID, answer_words, question_words
from triage.knowledge.texts import Texts

__all__ = ["DID", "answer_words", "answers_so_far", "question_words"]


def answers_so_far(
    texts: Texts, reading: ParsedAnswers, links: Links, only: Iterable[str] | None = None
) -> list[Answered]:
    """Every answer that holds, or those in `only`, each with the way to answer it again."""
    wanted = reading.answers if only is None else set(only)
    return [
        Answered(
            question_words(texts, observation),
            answer_words(texts, observation, answer),
            links.danger() if observation == SCREEN else links.step(without=[observation]),
        )
        for observation, answer in reading.answers.items()
        if observation in wanted
    ]
