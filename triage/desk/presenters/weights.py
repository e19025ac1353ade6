"""An answer's weight as a bar on either side of a line, and the same in words.

Right of the line it points to the likeliest cause, left of it away from it. The longest bar is 20 decibans (a hundred
to one); what weighs more stops there, and its figure says so.
"""

from dataclasses import dataclass

from django.utils.translation import gettext as _

from triage.check_pages.drawings.drawing import Drawing
from triage.jobsheet.shapes import SheetAnswer

MAX_DECIBANS = 20.0
HALF_WIDTH = 60  # of the drawing's width
MIN_DECIBANS = 0.05  # below this nothing shows


@dataclass(frozen=True, slots=True)
class AnswerWeight:
    """`left` and `wide` place the bar on a drawing that is twice `HALF` wide; `side` is to, away or none.
    `picture` shows the figures of a reading."""

    question: str
    answer: str
    figure: str
    side: str
    left: int
    width: int
    picture: Drawing | None = None


def weight_of(answer: SheetAnswer) -> AnswerWeight:
    decibans, question, words = answer["decibans"], _with_colon(answer["question"]), answer["text"]
    if decibans is None:
        return AnswerWeight(question, words, _("not weighed"), "none", HALF_WIDTH, 0)
    if abs(decibans) < MIN_DECIBANS:
        return AnswerWeight(question, words, _("0, says nothing"), "none", HALF_WIDTH, 0)
    width = max(1, round(HALF_WIDTH * min(abs(decibans), MAX_DECIBANS) / MAX_DECIBANS))
    to = decibans > 0
    figure = (_("%(figure)s points to it") if to else _("%(figure)s points away")) % {"figure": signed(decibans)}
    left = HALF_WIDTH if to else HALF_WIDTH - width
    return AnswerWeight(question, words, figure, "to" if to else "away", left, width)


def _with_colon(question: str) -> str:
    """A question as it stands before its answer."""
    return question if question.endswith("?") else f"{question}:"


def signed(decibans: float) -> str:
    """With its sign, and a real minus."""
    return f"{decibans:+.1f}".replace("-", "−")
