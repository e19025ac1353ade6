"""One request of the call page, read once: the visit it shares with the householder's pages, and the call itself.

The firm is the one the agent is signed in to, whatever an address says, and so is the place until the address names
another one.
"""

from dataclasses import dataclass, replace

from triage.check_pages.query import Links, ParsedQuery, parse_query
from triage.check_pages.request import CheckRequest, check_request_for
from triage.desk.call.address import CallLinks, OnTheLine, split
from triage.desk.request import MemberRequest
from triage.knowledge.library import library
from triage.models import Firm


@dataclass(frozen=True)
class Call:
    check_request: CheckRequest
    line: OnTheLine
    links: CallLinks
    firm: Firm

    @property
    def phone_href(self) -> str:
        """Where the caller's telephone opens the same check: the trail, and whose check it is."""
        return self.check_request.origin + self.check_request.links.step()


def open_call(request: MemberRequest) -> Call:
    firm = request.member.firm
    line, asked = split(parse_query(request.META.get("QUERY_STRING", "")))
    region = asked.region if asked.region in library().regions else firm.region
    found = check_request_for(request, ParsedQuery(asked.pairs, region, asked.truncated))
    region, answers = found.region.id, found.answers
    check_request = replace(found, firm=firm, links=Links(region, answers, firm.slug))
    return Call(check_request, line, CallLinks(region, answers, line), firm)
