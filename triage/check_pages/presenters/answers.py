"""Questions and answers in the words a person saw, and the list of what was answered so far."""

from collections.abc import Iterable, Mapping

from django.utils.translation import gettext as _

from triage.check_pages.address import Links
from triage.check_pages.view_models import Answered
from triage.engine import CANT_TELL, SCREEN, Reading
from triage.knowledge.texts import Texts

DID = "did-"


def question_words(texts: Texts, observation: str) -> str:
    """The short name of a question; the id where a text has none, so that nothing is ever hidden."""
    if observation == SCREEN:
        return _("Danger signs")
    if observation in texts.gates:
        return texts.gates[observation].ask
    if observation.removeprefix(DID) in texts.tasks:
        return texts.tasks[observation.removeprefix(DID)].title
    question = texts.questions.get(observation)
    return question.short if question else observation


def answer_words(texts: Texts, observation: str, answer: str) -> str:
    if answer == CANT_TELL:
        return _("I can’t tell")
    if observation == SCREEN:
        return texts.start.danger.none
    question = texts.questions.get(observation)
    return (question.options if question else _fixed_words()).get(answer, answer)


def _fixed_words() -> Mapping[str, str]:
    """The answers to gates and to "did that fix it?", which are the same for all of them."""
    return {
        "yes": _("Yes"),
        "no": _("No"),
        "unsure": _("Not sure"),
        "fixed": _("That fixed it"),
        "not-fixed": _("No change"),
    }


def answers_so_far(texts: Texts, reading: Reading, links: Links, only: Iterable[str] | None = None) -> list[Answered]:
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
