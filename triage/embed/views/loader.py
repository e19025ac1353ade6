"""The script a firm pastes. It knows its firm from its own address, so it is one file for all of them."""

from pathlib import Path

from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404
from django.views.decorators.http import require_safe

import triage
from triage.models import Firm

SCRIPT = Path(triage.__file__).parent / "static" / "triage" / "embed" / "loader.js"
FRESH_SECONDS = 300


@require_safe
def loader(_request: HttpRequest, firm: str) -> HttpResponse:
    get_object_or_404(Firm, slug=firm)
    response = HttpResponse(SCRIPT.read_bytes(), content_type="text/javascript; charset=utf-8")
    response.headers["Cache-Control"] = f"public, max-age={FRESH_SECONDS}"
    response.headers["Cross-Origin-Resource-Policy"] = "cross-origin"  # it is meant for other sites' pages
    return response
