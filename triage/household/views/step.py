"""The check itself: whatever the answers in the address lead to next."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.keeping import kept
from triage.check_pages.presenters.emergency import emergency_page
from triage.check_pages.presenters.out_of_scope import out_of_scope_page
from triage.check_pages.presenters.question import asked_page
from triage.check_pages.presenters.result import result_page
from triage.check_pages.request import CheckRequest, read_check_request
from triage.engine import Emergency, OutOfScope, Question, Result
from triage.household.views.showing import Page, show


@require_safe
@kept
def step(request: HttpRequest) -> HttpResponseBase:
    check_request = read_check_request(request)
    return show(request, check_request, page_of(check_request))


def page_of(check_request: CheckRequest) -> Page:
    match check_request.step:
        case Question() as asked:
            return asked_page(check_request, asked)
        case Emergency() as danger:
            return emergency_page(check_request, danger)
        case Result() as advice:
            return result_page(check_request, advice)
        case OutOfScope(reason=reason):
            return out_of_scope_page(check_request, reason)
