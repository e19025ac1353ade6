"""One request of the call page, read once: the visit it shares with the householder's pages, and the call itself.

The firm is the one the agent is signed in to, whatever an address says, and so is the place until the address names
another one.
"""

from dataclasses import dataclass, replace
from typing import cast

from django.http import HttpRequest

from triage.check_pages.address import Asked, Links, read_address
from triage.check_pages.visit import Visit, visit_of
from triage.desk.call.address import CallLinks, OnTheLine, split
from triage.desk.layout import DeskRequest
from triage.knowledge.library import library
from triage.models import Firm, Member


@dataclass(frozen=True)
class Call:
    visit: Visit
    line: OnTheLine
    links: CallLinks
    firm: Firm

    @property
    def phone_href(self) -> str:
        """Where the caller's telephone opens the same check: the trail, and whose check it is."""
        return self.visit.origin + self.visit.links.step()


def open_call(request: HttpRequest) -> Call:
    firm = cast(Member, cast(DeskRequest, request).member).firm
    line, asked = split(read_address(request.META.get("QUERY_STRING", "")))
    region = asked.region if asked.region in library().regions else firm.region
    found = visit_of(request, Asked(asked.pairs, region, asked.cut))
    place, answers = found.place.region.id, found.reading.answers
    visit = replace(found, firm=firm, links=Links(place, answers, firm.slug))
    return Call(visit, line, CallLinks(place, answers, line), firm)
