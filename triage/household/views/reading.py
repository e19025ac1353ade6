"""A reading by itself: measured without a check, behind the danger signs, and never after a red flag."""

from django.http import Http404, HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.presenters.readings.kinds import KINDS
from triage.check_pages.presenters.readings.page import ReadingPage, reading_page
from triage.check_pages.request import read_check_request
from triage.household.views.alarmed import to_the_check
from triage.household.views.showing import show
from triage.household.views.step import page_of


@require_safe
def reading(request: HttpRequest, kind: str) -> HttpResponseBase:
    check_request = read_check_request(request)
    if kind not in KINDS:
        raise Http404
    if check_request.check.flags:
        return show(request, check_request, page_of(check_request))
    page = reading_page(check_request, kind)
    found = page.form.result if isinstance(page, ReadingPage) and page.form else None
    return to_the_check(request, found) or show(request, check_request, page)
