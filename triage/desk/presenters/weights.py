"""An answer's weight as a bar on either side of a line, and the same in words.

Right of the line it points to the likeliest cause, left of it away from it. The longest bar is 20 decibans (a hundred
to one); what weighs more stops there, and its figure says so.
"""

from dataclasses import dataclass

from django.utils.translation import gettext as _

from triage.check_pages.drawings.drawing import Drawing
from triage.jobsheet.shapes import Answer

LONGEST = 20.0
HALF = 60  # of the drawing's width
LEAST = 0.05  # below this nothing shows


@dataclass(frozen=True, slots=True)
class Weight:
    """`left` and `wide` place the bar on a drawing that is twice `HALF` wide; `side` is to, away or none.
    `picture` shows the figures of a reading."""

    question: str
    words: str
    figure: str
    side: str
    left: int
    wide: int
    picture: Drawing | None = None


def weight_of(answer: Answer) -> Weight:
    decibans, question, words = answer["decibans"], _asked(answer["question"]), answer["words"]
    if decibans is None:
        return Weight(question, words, _("not weighed"), "none", HALF, 0)
    if abs(decibans) < LEAST:
        return Weight(question, words, _("0, says nothing"), "none", HALF, 0)
    wide = max(1, round(HALF * min(abs(decibans), LONGEST) / LONGEST))
    to = decibans > 0
    figure = (_("%(figure)s points to it") if to else _("%(figure)s points away")) % {"figure": signed(decibans)}
    left = HALF if to else HALF - wide
    return Weight(question, words, figure, "to" if to else "away", left, wide)


def _asked(question: str) -> str:
    """A question as it stands before its answer."""
    return question if question.endswith("?") else f"{question}:"


def signed(decibans: float) -> str:
    """With its sign, and a real minus."""
    return f"{decibans:+.1f}".replace("-", "−")
