"""Questions, answers and chances in words, alike on every page, sheet and message.

"About 7 in 10 ovens that answer like this" is understood by more people than 70 %; nothing finer is claimed.
"""

from django.utils.translation import gettext, gettext_noop

from triage.engine import CANT_TELL, SCREEN
from triage.jobsheet.reading_text import answer_in_figures
from triage.jobsheet.sentences import sentence
from triage.knowledge.texts import Texts

DID = "did-"
SMALL, GREAT = 0.1, 0.95
ALMOST_ALL = 10
SCREEN_LABEL = gettext_noop("Danger signs")
NOT_SAID = gettext_noop("not said")
ANSWER_LABELS = {
    CANT_TELL: gettext_noop("I can’t tell"),
    "yes": gettext_noop("Yes"),
    "no": gettext_noop("No"),
    "unsure": gettext_noop("Not sure"),
    "fixed": gettext_noop("That fixed it"),
    "not-fixed": gettext_noop("No change"),
}
"""What every question can be answered, and the answers to gates and to "did that fix it?", alike in every pack."""


def question_label(texts: Texts, observation: str) -> str:
    """The short name of a question; the id where a text has none, so that nothing is ever hidden."""
    if observation == SCREEN:
        return gettext(SCREEN_LABEL)
    if observation in texts.gates:
        return texts.gates[observation].ask
    if observation.removeprefix(DID) in texts.tasks:
        return texts.tasks[observation.removeprefix(DID)].title
    question = texts.questions.get(observation)
    return question.short if question else observation


def answer_label(texts: Texts, observation: str, answer: str) -> str:
    if answer == CANT_TELL:
        return gettext(ANSWER_LABELS[CANT_TELL])
    if observation == SCREEN:
        return texts.start.danger.none
    question = texts.questions.get(observation)
    label = question.options.get(answer) if question else _fixed_label(answer)
    return label or answer_in_figures(observation, answer) or answer


def _fixed_label(answer: str) -> str:
    return gettext(ANSWER_LABELS[answer]) if answer in ANSWER_LABELS else ""


def short_chance(chance: float) -> str:
    """A chance as so many of ten; never certain, never nothing."""
    return sentence("share", per_ten=per_ten(chance))


def per_ten(chance: float) -> int:
    """How many of ten ovens, as the words say it; ALMOST_ALL for more than nine."""
    if chance >= GREAT:
        return ALMOST_ALL
    return 0 if chance < SMALL else int(chance * 10 + 0.5)


def tenths(chance: float) -> int:
    """How many of ten ovens are drawn for it."""
    return min(9, per_ten(chance))
