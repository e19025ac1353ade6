"""One request of the call page, read once: the visit it shares with the householder's pages, and the call itself."""

from dataclasses import dataclass

from django.http import HttpRequest

from triage.check_pages.address import read_address
from triage.check_pages.visit import Visit, visit_of
from triage.desk.call.address import CallLinks, OnTheLine, split


@dataclass(frozen=True)
class Call:
    visit: Visit
    line: OnTheLine
    links: CallLinks

    @property
    def phone_href(self) -> str:
        """Where the caller's telephone opens the same check: the trail alone."""
        return self.visit.origin + self.visit.links.step()


def open_call(request: HttpRequest) -> Call:
    line, asked = split(read_address(request.META.get("QUERY_STRING", "")))
    visit = visit_of(request, asked)
    return Call(visit, line, CallLinks(visit.place.region.id, visit.reading.answers, line))
