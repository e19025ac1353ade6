"""One request of a check's page, read once: the place, the words, the answers and the step they lead to.

Nothing is kept between two visits; everything comes from the address and from what the browser says it speaks.
"""

from dataclasses import dataclass
from functools import cached_property

from django.http import HttpRequest
from django.utils.translation import gettext as _

from triage.check_pages.address import Asked, Links, read_address
from triage.check_pages.place import guess_region
from triage.conf import DEFAULT_REGION
from triage.engine import Reading, Step, advise, read_trail
from triage.knowledge.library import Library, library
from triage.knowledge.region_builder import RegionProfile
from triage.knowledge.texts import Texts


@dataclass(frozen=True)
class Visit:
    """`place_named`: whether the address itself named a region we know; if not, the page depends on the browser.
    `origin` is the site's own address, without a slash."""

    library: Library
    place: RegionProfile
    texts: Texts
    reading: Reading
    links: Links
    notices: tuple[str, ...]
    place_named: bool
    origin: str

    @cached_property
    def step(self) -> Step:
        """What the answers come to. Reading the good answers again finds no new problem in them."""
        return advise(self.library.pack, self.place.region, self.reading.answers.items())


def open_visit(request: HttpRequest) -> Visit:
    known = library()
    asked = read_address(request.META.get("QUERY_STRING", ""))
    named = asked.region is not None and asked.region in known.regions
    place = known.regions[_region_of(request, asked, known)]
    reading = read_trail(known.pack, asked.pairs)
    return Visit(
        library=known,
        place=place,
        texts=known.words(place.region.id),
        reading=reading,
        links=Links(place.region.id, reading.answers),
        notices=tuple(_notices(asked, place, known)),
        place_named=named,
        origin=request.build_absolute_uri("/").rstrip("/"),
    )


def _region_of(request: HttpRequest, asked: Asked, known: Library) -> str:
    if asked.region in known.regions:
        return str(asked.region)
    if asked.region is not None:
        return DEFAULT_REGION.value()
    return guess_region(request.headers.get("Accept-Language", ""), known.regions, DEFAULT_REGION.value())


def _notices(asked: Asked, place: RegionProfile, known: Library) -> list[str]:
    notices = []
    if asked.region is not None and asked.region not in known.regions:
        words = {"place": place.name}
        notices.append(
            _("We do not know the place in this address. The rules and numbers shown are for %(place)s.") % words
        )
    if asked.cut:
        notices.append(_("The address was too long to read to its end. The first answers are used."))
    return notices
