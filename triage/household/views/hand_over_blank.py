"""A firm’s form without anybody’s answers, for phones: pages/blank_form.js puts in those of the page’s address."""

from django.http import Http404, HttpRequest
from django.http.response import HttpResponseBase
from django.shortcuts import render
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_safe

from triage.check_pages.hand_over_form import Sent
from triage.check_pages.request import read_check_request
from triage.household.presenters.hand_over import hand_over_page
from triage.household.views.showing import context_of


@require_safe
@cache_control(no_cache=True)
def hand_over_blank(request: HttpRequest) -> HttpResponseBase:
    check_request = read_check_request(request)
    if check_request.firm is None:
        raise Http404
    page = hand_over_page(check_request, check_request.firm, Sent({}), state="", problems=[])
    return render(request, "triage/hand_over.html", {**context_of(check_request, page), "blank": True})
