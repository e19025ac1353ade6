"""The danger signs, one tap from every page, with the answers so far kept."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.keeping import kept
from triage.check_pages.presenters.question import danger_page
from triage.check_pages.visit import open_visit
from triage.household.views.showing import show


@require_safe
@kept
def danger(request: HttpRequest) -> HttpResponseBase:
    visit = open_visit(request)
    return show(request, visit, danger_page(visit))
