"""The ways out for what this check is not about."""

from django.http import Http404, HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.presenters.leave import exit_page
from triage.check_pages.visit import open_visit
from triage.household.views.showing import show


@require_safe
def leave(request: HttpRequest, reason: str) -> HttpResponseBase:
    visit = open_visit(request)
    if reason not in visit.texts.start.exits:
        raise Http404
    return show(request, visit, exit_page(visit, reason))
