"""What a firm's page loads: the script it pastes, the frame's first address, and the firm's colour as a stylesheet."""

from pathlib import Path

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import get_object_or_404
from django.views.decorators.http import require_safe

import triage
from triage.check_pages.request import check_request_of
from triage.engine.pack import OPENING
from triage.models import Firm
from triage.query import ParsedQuery, parse_query
from triage.web.accent import Shades, dark_shades, light_shades

SCRIPT = Path(triage.__file__).parent / "static" / "triage" / "embed" / "loader.js"
FRESH_SECONDS = 300
LIGHT = ":root {{ --heat: {accent}; --heat-words: {text}; --warm: {accent}1f; }}\n"
DARK = (
    "@media (prefers-color-scheme: dark) {{ :root {{ --heat: {accent}; --heat-words: {text}; --warm: {accent}29;"
    " --glow: drop-shadow(0 0 3px {accent}99); }} }}\n"
)
FORCED = "@media (forced-colors: active) { :root { --heat: Highlight; --warm: transparent; --glow: none; } }\n"


@require_safe
def loader(_request: HttpRequest, firm: str) -> HttpResponse:
    """The script knows its firm from its own address, so it is one file for all of them."""
    get_object_or_404(Firm, slug=firm)
    response = HttpResponse(SCRIPT.read_bytes(), content_type="text/javascript; charset=utf-8")
    response.headers["Cache-Control"] = f"public, max-age={FRESH_SECONDS}"
    response.headers["Cross-Origin-Resource-Policy"] = "cross-origin"  # it is meant for other sites' pages
    return response


@require_safe
def frame(request: HttpRequest, firm: str) -> HttpResponseRedirect:
    """To the complaint that is named, else to the first page, in the firm's region unless another is named."""
    found = get_object_or_404(Firm, slug=firm)
    asked = parse_query(request.META.get("QUERY_STRING", ""))
    first = tuple(pair for pair in asked.pairs if pair[0] == OPENING)
    check_request = check_request_of(request, ParsedQuery(first, asked.region, asked.truncated, firm=found.slug))
    links = check_request.links
    return HttpResponseRedirect(links.step() if OPENING in check_request.answers else links.restart())


@require_safe
def accent(_request: HttpRequest, firm: str) -> HttpResponse:
    """A stylesheet of its own, because no page here may carry a style inside."""
    colour = get_object_or_404(Firm, slug=firm).accent
    sheet = _filled(LIGHT, light_shades(colour)) + _filled(DARK, dark_shades(colour)) + FORCED
    response = HttpResponse(sheet, content_type="text/css; charset=utf-8")
    response.headers["Cache-Control"] = f"public, max-age={FRESH_SECONDS}"
    return response


def _filled(rule: str, shades: Shades) -> str:
    return rule.format(accent=shades.accent, text=shades.text)
