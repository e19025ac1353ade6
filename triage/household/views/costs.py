"""What it may cost. Before there is advice there is no price either, but an energy label can be read; a red flag or a
way out of the check stops both."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.presenters.costs import costs_page
from triage.check_pages.presenters.energy_label import label_page
from triage.check_pages.request import CheckRequest, read_check_request
from triage.engine import Question, Result
from triage.household.views.showing import Page, show
from triage.household.views.step import page_of


@require_safe
def costs(request: HttpRequest) -> HttpResponseBase:
    check_request = read_check_request(request)
    return show(request, check_request, _page(check_request))


def _page(check_request: CheckRequest) -> Page:
    match check_request.step:
        case Result() as advice:
            return costs_page(check_request, advice)
        case Question():
            return label_page(check_request)
        case _:
            return page_of(check_request)
