"""One task. Whether it may be done now is worked out from the answers each time, never taken from the address."""

from django.http import Http404, HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.presenters.task import task_page
from triage.check_pages.request import read_check_request
from triage.household.views.alarmed import to_the_check
from triage.household.views.showing import show


@require_safe
def task(request: HttpRequest, task: str) -> HttpResponseBase:
    check_request = read_check_request(request)
    if task not in check_request.texts.tasks:
        raise Http404
    page = task_page(check_request, task)
    return to_the_check(request, page.reading.result if page.reading else None) or show(request, check_request, page)
