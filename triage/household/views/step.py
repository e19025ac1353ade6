"""The check itself: whatever the answers in the address lead to next."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.keeping import kept
from triage.check_pages.page_models import Page
from triage.check_pages.presenters.advice import advice_page
from triage.check_pages.presenters.leave import exit_page
from triage.check_pages.presenters.make_safe import make_safe_page
from triage.check_pages.presenters.question import asked_page
from triage.check_pages.request import CheckRequest, read_check_request
from triage.engine import Emergency, OutOfScope, Question, Result
from triage.household.views.showing import show


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
            return make_safe_page(check_request, danger)
        case Result() as advice:
            return advice_page(check_request, advice)
        case OutOfScope(reason=reason):
            return exit_page(check_request, reason)
