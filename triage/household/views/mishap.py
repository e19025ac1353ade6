"""The two pages for when there is no page. The page for a failure uses nothing that may be what went wrong: it knows no
place, so it lists the emergency numbers of all of them."""

from django.http import HttpRequest, HttpResponse, HttpResponseNotFound, HttpResponseServerError
from django.template.loader import render_to_string

from triage.check_pages.presenters.numbers import emergency_call
from triage.check_pages.visit import open_visit


def not_found(request: HttpRequest, exception: Exception) -> HttpResponse:  # noqa: ARG001  (passed by name)
    visit = open_visit(request)
    context = {"emergency": emergency_call(visit.place), "danger_href": visit.links.danger()}
    return HttpResponseNotFound(render_to_string("triage/404.html", context))


def server_error(_request: HttpRequest) -> HttpResponse:
    return HttpResponseServerError(render_to_string("triage/500.html"))
