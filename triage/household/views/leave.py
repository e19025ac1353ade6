"""The ways out for what this check is not about."""

from django.http import Http404, HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.presenters.out_of_scope import out_of_scope_page
from triage.check_pages.request import read_check_request
from triage.household.views.showing import show


@require_safe
def leave(request: HttpRequest, reason: str) -> HttpResponseBase:
    check_request = read_check_request(request)
    if reason not in check_request.texts.start.exits:
        raise Http404
    return show(request, check_request, out_of_scope_page(check_request, reason))
