"""Questions and answers in the words a person saw, and the list of what was answered so far."""

from collections.abc import Iterable, Mapping

from triage.check_pages.query import Links
from triage.check_pages.view_models import Answered
from triage.engine import SCREEN
from triage.jobsheet.wording import DID, answer_words, question_words
from triage.knowledge.texts import Texts

__all__ = ["DID", "answer_words", "answers_so_far", "question_words"]


def answers_so_far(
    texts: Texts, answers: Mapping[str, str], links: Links, only: Iterable[str] | None = None
) -> list[Answered]:
    """Every answer that holds, or those in `only`, each with the way to answer it again."""
    wanted = answers if only is None else set(only)
    return [
        Answered(
            question_words(texts, observation),
            answer_words(texts, observation, answer),
            links.danger() if observation == SCREEN else links.step(without=[observation]),
        )
        for observation, answer in answers.items()
        if observation in wanted
    ]
