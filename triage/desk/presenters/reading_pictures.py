"""The picture of a reading on a job sheet, drawn again from the figures that were frozen with it.

A pack of today may not know the reading any more, or read its figures otherwise. Then its words stand alone: they are
what the person saw.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.presenters.readings.kinds import KINDS
from triage.conf import DEFAULT_REGION
from triage.engine.readings import InvalidReading
from triage.jobsheet.shapes import FullSummary, SheetAnswer
from triage.knowledge.library import library
from triage.knowledge.region_builder import RegionProfile


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
