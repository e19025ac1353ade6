"""Questions, answers and chances in words, alike on every page, sheet and message.

"About 7 in 10 ovens that answer like this" is understood by more people than 70 %; nothing finer is claimed.
"""

from collections.abc import Mapping

from django.utils.translation import gettext as _

from triage.engine import CANT_TELL, SCREEN
from triage.jobsheet.reading_text import answer_in_figures
from triage.knowledge.texts import Texts

DID = "did-"
SMALL, GREAT = 0.1, 0.95


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
    text = (question.options if question else _fixed_words()).get(answer)
    return text or answer_in_figures(observation, answer) or answer


def _fixed_words() -> Mapping[str, str]:
    """The answers to gates and to "did that fix it?", which are the same for all of them."""
    return {
        "yes": _("Yes"),
        "no": _("No"),
        "unsure": _("Not sure"),
        "fixed": _("That fixed it"),
        "not-fixed": _("No change"),
    }


def short_chance(chance: float) -> str:
    """A chance as so many of ten; never certain, never nothing."""
    if chance < SMALL:
        return _("Fewer than 1 in 10")
    if chance >= GREAT:
        return _("More than 9 in 10")
    return _("About %(n)s in 10") % {"n": tenths(chance)}


def tenths(chance: float) -> int:
    """How many of ten ovens, the same number the words say."""
    return 0 if chance < SMALL else min(9, int(chance * 10 + 0.5))
