"""Where a firm's frame begins: at the complaint it names, else at the first page, in the firm's place unless it names
another."""

from django.http import HttpRequest, HttpResponseRedirect
from django.shortcuts import get_object_or_404
from django.views.decorators.http import require_safe

from triage.check_pages.address import Asked, read_address
from triage.check_pages.visit import visit_of
from triage.engine.pack import OPENING
from triage.models import Firm


@require_safe
def frame(request: HttpRequest, firm: str) -> HttpResponseRedirect:
    found = get_object_or_404(Firm, slug=firm)
    asked = read_address(request.META.get("QUERY_STRING", ""))
    first = tuple(pair for pair in asked.pairs if pair[0] == OPENING)
    visit = visit_of(request, Asked(first, asked.region, asked.cut, firm=found.slug))
    links = visit.links
    return HttpResponseRedirect(links.step() if OPENING in visit.reading.answers else links.start())
