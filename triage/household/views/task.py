"""One task. Whether it may be done now is worked out from the answers each time, never taken from the address."""

from django.http import Http404, HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.presenters.task import task_page
from triage.check_pages.visit import open_visit
from triage.household.views.alarmed import to_the_check
from triage.household.views.showing import show


@require_safe
def task(request: HttpRequest, task: str) -> HttpResponseBase:
    visit = open_visit(request)
    if task not in visit.texts.tasks:
        raise Http404
    page = task_page(visit, task)
    return to_the_check(request, page.reading.result if page.reading else None) or show(request, visit, page)
