"""The two pages for when there is no page. They use nothing that may be what went wrong."""

from django.http import HttpRequest, HttpResponse, HttpResponseNotFound, HttpResponseServerError
from django.template.loader import render_to_string


def not_found(_request: HttpRequest, exception: Exception) -> HttpResponse:  # noqa: ARG001  (passed by name)
    return HttpResponseNotFound(render_to_string("triage/404.html"))


def server_error(_request: HttpRequest) -> HttpResponse:
    return HttpResponseServerError(render_to_string("triage/500.html"))
