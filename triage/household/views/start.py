"""The first page."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.keeping import kept
from triage.check_pages.presenters.start import start_page
from triage.check_pages.request import read_check_request
from triage.household.views.showing import show


@require_safe
@kept
def start(request: HttpRequest) -> HttpResponseBase:
    check_request = read_check_request(request)
    return show(request, check_request, start_page(check_request))
