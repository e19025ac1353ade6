"""From plain values to a response: what any cache may keep, and what none may."""

import json
from collections.abc import Mapping
from hashlib import sha256

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.utils.cache import get_conditional_response, patch_cache_control

from triage.check_pages.caching import FRESH_SECONDS, let_caches_keep
from triage.check_pages.request import CheckRequest

JSON = "application/json"

Payload = Mapping[str, object]


def public_response(
    request: HttpRequest, payload: Mapping[str, object], check_request: CheckRequest
) -> HttpResponseBase:
    """What follows from the address alone, kept like a page of the check."""
    return let_caches_keep(request, _response(payload, JSON), check_request)


def document_response(
    request: HttpRequest, payload: Mapping[str, object], content_type: str = JSON
) -> HttpResponseBase:
    """A description that changes with the program only."""
    response = _response(payload, content_type)
    response.headers["ETag"] = f'"{sha256(response.content).hexdigest()[:16]}"'
    patch_cache_control(response, public=True, max_age=FRESH_SECONDS)
    return get_conditional_response(request, etag=response.headers["ETag"], response=response) or response


def private_response(payload: Payload, status: int = 200, headers: Mapping[str, str] | None = None) -> HttpResponse:
    """What names somebody: kept by no cache."""
    response = _response(payload, JSON)
    response.status_code = status
    response.headers["Cache-Control"] = "no-store, private"
    response.headers["X-Robots-Tag"] = "noindex, nofollow"
    for name, value in (headers or {}).items():
        response.headers[name] = value
    return response


def _response(payload: Payload, content_type: str) -> HttpResponse:
    return HttpResponse(json.dumps(payload, ensure_ascii=False, allow_nan=False), content_type=content_type)
