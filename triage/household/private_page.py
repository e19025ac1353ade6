"""Pages with somebody's name on them: kept by no cache, found by no search engine, framed by their own firm alone."""

from collections.abc import Mapping
from typing import Any

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.shortcuts import render

from triage.models import Firm
from triage.web.framing import allow_frames


def show_private(
    request: HttpRequest, template: str, context: Mapping[str, Any], firm: Firm, status: int = 200
) -> HttpResponseBase:
    return keep_private(render(request, template, dict(context), status=status), firm)


def keep_private(response: HttpResponse, firm: Firm | None) -> HttpResponseBase:
    response.headers["Cache-Control"] = "no-store, private"
    response.headers["Referrer-Policy"] = "no-referrer"
    response.headers["X-Robots-Tag"] = "noindex, nofollow"
    return allow_frames(response, firm.origins if firm else ())
