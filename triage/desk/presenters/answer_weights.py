"""What an answer weighs as a bar on either side of a line, with the picture of a reading.

Right of the line it points to the likeliest cause, left of it away from it. The longest bar is 20 decibans (a hundred
to one); what weighs more stops there, and its figure says so. A picture is drawn again from the figures that were
frozen with the sheet. A pack of today may not know the reading any more, or read its figures otherwise. Then its text
stands alone: it is what the person saw.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from django.utils.translation import gettext as _

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.presenters.readings.kinds import KINDS
from triage.conf import DEFAULT_REGION
from triage.engine.readings import InvalidReading
from triage.jobsheet.shapes import FullSummary, SheetAnswer
from triage.knowledge.library import library
from triage.knowledge.region_builder import RegionProfile

MAX_DECIBANS = 20.0
HALF_WIDTH = 60  # of the drawing's width
MIN_DECIBANS = 0.05  # below this nothing shows


@dataclass(frozen=True, slots=True)
class AnswerWeight:
    """`left` and `width` place the bar on a drawing that is twice `HALF_WIDTH` wide; `side` is to, away or none.
    `picture` shows the figures of a reading."""

    question: str
    answer: str
    figure: str
    side: str
    left: int
    width: int
    picture: Drawing | None = None


def weight_of(answer: SheetAnswer) -> AnswerWeight:
    decibans, question, text = answer["decibans"], _with_colon(answer["question"]), answer["text"]
    if decibans is None:
        return AnswerWeight(question, text, _("not weighed"), "none", HALF_WIDTH, 0)
    if abs(decibans) < MIN_DECIBANS:
        return AnswerWeight(question, text, _("0, says nothing"), "none", HALF_WIDTH, 0)
    width = max(1, round(HALF_WIDTH * min(abs(decibans), MAX_DECIBANS) / MAX_DECIBANS))
    to = decibans > 0
    figure = (_("%(figure)s points to it") if to else _("%(figure)s points away")) % {"figure": signed(decibans)}
    left = HALF_WIDTH if to else HALF_WIDTH - width
    return AnswerWeight(question, text, figure, "to" if to else "away", left, width)


def _with_colon(question: str) -> str:
    """A question as it stands before its answer."""
    return question if question.endswith("?") else f"{question}:"


def signed(decibans: float) -> str:
    """With its sign, and a real minus."""
    return f"{decibans:+.1f}".replace("-", "−")


@dataclass(frozen=True, slots=True)
class SheetRegion:
    """Where the oven of a job sheet stands, which decides between °C and °F."""

    region: RegionProfile


def readings_with_pictures(check: FullSummary) -> list[tuple[SheetAnswer, Drawing | None]]:
    """Each reading with its picture; figures that answer several questions are drawn once, at the first."""
    regions = library().regions
    where = SheetRegion(regions.get(check["region"]["id"]) or regions[DEFAULT_REGION.value()])
    return list(_drawn(check["readings"], where))


def _drawn(readings: Iterable[SheetAnswer], where: SheetRegion) -> Iterable[tuple[SheetAnswer, Drawing | None]]:
    seen: set[tuple[str, str]] = set()
    for answer in readings:
        kind, text = _kind_of(answer), answer["answer"]
        yield answer, None if (kind, text) in seen else _drawing_of(kind, text, where)
        seen.add((kind, text))


def _kind_of(answer: SheetAnswer) -> str:
    """The kind of figures the reading takes; nothing where it takes none, or is known no more."""
    known = library().pack.observations.get(answer["observation"])
    return known.measurement.kind if known and known.measurement else ""


def _drawing_of(kind: str, text: str, where: SheetRegion) -> Drawing | None:
    if kind not in KINDS:
        return None
    try:
        return KINDS[kind].drawing(where, text)
    except InvalidReading:
        return None
