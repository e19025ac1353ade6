"""Which region's rules and numbers apply: the one in the address, else a guess from the browser's language.

Only a territory is taken for a place ("en-AU", not "en"): a language is spoken in many. A guess is always shown and
changed in one tap. An unknown territory gets the generic region, whose rules are the strictest and whose number is
said to be a guess; somebody whose browser names no territory gets the site's own.
"""

from collections.abc import Iterable, Mapping
from typing import Protocol

from triage.knowledge.region_builder import RegionProfile

ELSEWHERE = "iec"
LONGEST_HEADER = 500


class HasRegion(Protocol):
    """Whatever knows where the oven stands: a visit, or a job sheet long after it."""

    @property
    def region(self) -> RegionProfile: ...


def guess_region(accept_language: str, regions: Mapping[str, RegionProfile], default: str) -> str:
    """The id of the region meant by an Accept-Language header."""
    territories = list(_territories(accept_language))
    for territory in territories:
        for region, profile in regions.items():
            if territory == profile.territory:
                return region
    return ELSEWHERE if territories and ELSEWHERE in regions else default


def _territories(accept_language: str) -> Iterable[str]:
    """Two-letter territories of the header, the most wanted first."""
    weighted = []
    for order, part in enumerate(accept_language[:LONGEST_HEADER].split(",")):
        tag, _, rest = part.strip().partition(";")
        found = [subtag.upper() for subtag in tag.split("-")[1:] if len(subtag) == 2 and subtag.isalpha()]
        weighted += [(-_quality(rest), order, territory) for territory in found]
    return [territory for _, _, territory in sorted(weighted)]


def _quality(rest: str) -> float:
    try:
        return float(rest.strip().removeprefix("q=")) if rest else 1.0
    except ValueError:
        return 0.0
