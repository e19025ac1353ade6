"""What it may cost. Before there is advice there is no price either: the check goes on where it stands."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.presenters.costs import costs_page
from triage.check_pages.visit import open_visit
from triage.engine import Advice
from triage.household.views.showing import show
from triage.household.views.step import page_of


@require_safe
def costs(request: HttpRequest) -> HttpResponseBase:
    visit = open_visit(request)
    return show(request, visit, costs_page(visit, visit.step) if isinstance(visit.step, Advice) else page_of(visit))
