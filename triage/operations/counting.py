"""Counts every step that is answered, by the header it carries. An answer of "not modified" carries none."""

from collections.abc import Callable

from django.http import HttpRequest
from django.http.response import HttpResponseBase

from triage.operations.step_counts import count_step
from triage.web.step_header import STEP

API = "/api/"


class StepCountingMiddleware:
    def __init__(self, get_response: Callable[[HttpRequest], HttpResponseBase]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        response = self.get_response(request)
        kind = response.headers.get(STEP)
        if kind:
            count_step("api" if request.path_info.startswith(API) else "page", kind)
        return response
