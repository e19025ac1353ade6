"""Where a firm's frame begins: at the complaint it names, else at the first page, in the firm's place unless it names
another."""

from django.http import HttpRequest, HttpResponseRedirect
from django.shortcuts import get_object_or_404
from django.views.decorators.http import require_safe

from triage.check_pages.query import ParsedQuery, parse_query
from triage.check_pages.request import check_request_for
from triage.engine.pack import OPENING
from triage.models import Firm


@require_safe
def frame(request: HttpRequest, firm: str) -> HttpResponseRedirect:
    found = get_object_or_404(Firm, slug=firm)
    asked = parse_query(request.META.get("QUERY_STRING", ""))
    first = tuple(pair for pair in asked.pairs if pair[0] == OPENING)
    check_request = check_request_for(request, ParsedQuery(first, asked.region, asked.truncated, firm=found.slug))
    links = check_request.links
    return HttpResponseRedirect(links.step() if OPENING in check_request.answers else links.restart())
