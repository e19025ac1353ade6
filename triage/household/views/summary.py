"""What to tell the repairer, as a text file."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.presenters.summary import summary_text
from triage.check_pages.request import read_check_request
from triage.household.views.showing import show_text


@require_safe
def summary(request: HttpRequest) -> HttpResponseBase:
    check_request = read_check_request(request)
    return show_text(request, check_request, summary_text(check_request), "oven-check.txt")
