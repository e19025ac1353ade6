"""A firm's colour as a stylesheet of its own, because no page here may carry a style inside."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404
from django.views.decorators.http import require_safe

from triage.models import Firm
from triage.web.accent import Shades, dark_shades, light_shades

FRESH_SECONDS = 300
DAY = ":root {{ --heat: {heat}; --heat-words: {words}; --warm: {heat}1f; }}\n"
NIGHT = (
    "@media (prefers-color-scheme: dark) {{ :root {{ --heat: {heat}; --heat-words: {words}; --warm: {heat}29;"
    " --glow: drop-shadow(0 0 3px {heat}99); }} }}\n"
)
FORCED = "@media (forced-colors: active) { :root { --heat: Highlight; --warm: transparent; --glow: none; } }\n"


@require_safe
def accent(_request: HttpRequest, firm: str) -> HttpResponse:
    colour = get_object_or_404(Firm, slug=firm).accent
    sheet = _filled(DAY, light_shades(colour)) + _filled(NIGHT, dark_shades(colour)) + FORCED
    response = HttpResponse(sheet, content_type="text/css; charset=utf-8")
    response.headers["Cache-Control"] = f"public, max-age={FRESH_SECONDS}"
    return response


def _filled(rule: str, shades: Shades) -> str:
    return rule.format(heat=shades.accent, words=shades.text)
