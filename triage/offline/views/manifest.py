"""What a browser needs to put the check among a phone's apps, as the W3C's Web Application Manifest has it.

A text shared from another app comes to the first page's search box; the two places somebody may need in a hurry are
shortcuts.
"""

from typing import Any

from django.http import HttpRequest, JsonResponse
from django.templatetags.static import static
from django.urls import reverse
from django.utils.translation import get_language, get_language_bidi
from django.utils.translation import gettext as _
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_safe

FRESH_SECONDS = 3600


@require_safe
@cache_control(public=True, max_age=FRESH_SECONDS)
def manifest(_request: HttpRequest) -> JsonResponse:
    start = reverse("household-start")
    document = {
        "id": start,
        "name": _("Oven fault check"),
        "short_name": _("Oven check"),
        "description": _(
            "Find out what is wrong with an electric oven, make it safe, and know who should do what next."
        ),
        "lang": get_language() or "en",
        "dir": "rtl" if get_language_bidi() else "ltr",
        "start_url": start,
        "scope": start,
        "display": "standalone",
        "theme_color": "#fbf9f4",
        "background_color": "#fbf9f4",
        "icons": _icons(),
        "shortcuts": [{"name": _("Danger signs"), "url": reverse("household-danger")}],
        "share_target": {
            "action": start,
            "method": "GET",
            "enctype": "application/x-www-form-urlencoded",
            "params": {"title": "shared-title", "text": "shared-text"},
        },
    }
    return JsonResponse(document, content_type="application/manifest+json")


def _icons() -> list[dict[str, Any]]:
    return [
        _icon("oven-192.png", "192x192", "any"),
        _icon("oven-512.png", "512x512", "any"),
        _icon("oven-maskable-512.png", "512x512", "maskable"),
    ]


def _icon(name: str, sizes: str, purpose: str) -> dict[str, Any]:
    return {"src": static(f"triage/icons/{name}"), "sizes": sizes, "type": "image/png", "purpose": purpose}
