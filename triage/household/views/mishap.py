"""The pages for when there is no page. Those for a request that nobody can read and for a failure use nothing that may
be what went wrong: they know no place, so they list the emergency numbers of all of them."""

from django.http import HttpRequest, HttpResponse, HttpResponseBadRequest, HttpResponseNotFound, HttpResponseServerError
from django.template.loader import render_to_string

from triage.check_pages.presenters.phone_numbers import emergency_call
from triage.check_pages.request import read_check_request
from triage.web.json_errors import bad_request_response, is_api_request


def not_found(request: HttpRequest, exception: Exception) -> HttpResponse:  # noqa: ARG001  (passed by name)
    check_request = read_check_request(request)
    context = {"emergency": emergency_call(check_request.region), "danger_href": check_request.links.danger()}
    return HttpResponseNotFound(render_to_string("triage/404.html", context))


def bad_request(request: HttpRequest, exception: Exception) -> HttpResponse:  # noqa: ARG001  (passed by name)
    """Whatever reached no view: another site's name, ten thousand fields. A program gets it as a program reads it."""
    if is_api_request(request):
        return bad_request_response()
    return HttpResponseBadRequest(render_to_string("triage/400.html"))


def server_error(_request: HttpRequest) -> HttpResponse:
    return HttpResponseServerError(render_to_string("triage/500.html"))
