"""Whole page or fragment: decided here and nowhere else.

htmx asks for a fragment when it swaps a step in place. Without JavaScript, for a boosted link, and when the
browser goes back to a page htmx no longer remembers, the whole page is sent. All four share one address, so
every answer names the headers it depends on, or a cache would hand a bare fragment to somebody who opened the
page.
"""

from collections.abc import Mapping
from typing import Any, cast

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils.cache import patch_vary_headers
from django_htmx.middleware import HtmxDetails

DECIDING_HEADERS = ("HX-Request", "HX-Boosted", "HX-History-Restore-Request")


class StepRequest(HttpRequest):
    """A request after HtmxMiddleware."""

    htmx: HtmxDetails


def render_step(
    request: HttpRequest,
    page_template: str,
    fragment_template: str,
    context: Mapping[str, Any],
    status: int = 200,
) -> HttpResponse:
    """The fragment when htmx will swap it in, else the whole page; Vary names what it depends on."""
    template = fragment_template if wants_fragment(cast(StepRequest, request).htmx) else page_template
    response = render(request, template, dict(context), status=status)
    patch_vary_headers(response, DECIDING_HEADERS)
    return response


def wants_fragment(htmx: HtmxDetails) -> bool:
    return bool(htmx) and not htmx.boosted and not htmx.history_restore_request
