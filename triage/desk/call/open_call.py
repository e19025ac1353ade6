"""One request of the call page, read once: the check it shares with the householder's pages, and the call itself.

The firm is the one the agent is signed in to, whatever an address says, and so is the region until the address names
another one.
"""

from dataclasses import dataclass, replace
from typing import Any

from triage.check_pages.links import Links
from triage.check_pages.presenters.phone_numbers import emergency_call
from triage.check_pages.request import CheckRequest, check_request_of
from triage.desk.call.address import CallLinks, CallState, split_query
from triage.desk.request import MemberRequest
from triage.knowledge.library import library
from triage.models import Firm
from triage.query import ParsedQuery, parse_query


@dataclass(frozen=True)
class Call:
    check_request: CheckRequest
    state: CallState
    links: CallLinks
    firm: Firm

    @property
    def phone_href(self) -> str:
        """Where the caller's telephone opens the same check: the answers, and whose check it is."""
        return self.check_request.origin + self.check_request.links.step()


def open_call(request: MemberRequest) -> Call:
    firm = request.member.firm
    state, query = split_query(parse_query(request.META.get("QUERY_STRING", "")))
    region = query.region if query.region in library().regions else firm.region
    found = check_request_of(request, ParsedQuery(query.pairs, region, query.truncated))
    region, answers = found.region.id, found.answers
    check_request = replace(found, firm=firm, links=Links(region, answers, firm.slug))
    return Call(check_request, state, CallLinks(region, answers, state), firm)


def base_context(call: Call) -> dict[str, Any]:
    """What every page of a call shows around its own: whose call it is, where, and the number for an emergency."""
    region = call.check_request.region
    return {"firm": call.firm, "region": region.name, "emergency": emergency_call(region)}
