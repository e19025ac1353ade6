"""A firm's form without anybody's answers, for phones to keep: they put the check into it when there is no line."""

from django.http import Http404, HttpRequest
from django.http.response import HttpResponseBase
from django.shortcuts import render
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_safe

from triage.check_pages.hand_over_form import Sent
from triage.check_pages.visit import open_visit
from triage.household.presenters.hand_over import hand_over_page
from triage.household.views.showing import context_of


@require_safe
@cache_control(no_cache=True)
def hand_over_blank(request: HttpRequest) -> HttpResponseBase:
    visit = open_visit(request)
    if visit.firm is None:
        raise Http404
    page = hand_over_page(visit, visit.firm, Sent({}), state="", problems=[])
    return render(request, "triage/hand_over.html", context_of(visit, page))
