"""What to tell the repairer, as a text file."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.presenters.summary import summary_text
from triage.check_pages.visit import open_visit
from triage.household.views.showing import show_text


@require_safe
def summary(request: HttpRequest) -> HttpResponseBase:
    visit = open_visit(request)
    return show_text(request, visit, summary_text(visit), "oven-check.txt")
