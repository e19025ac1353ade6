"""The phone's pages, with the engine under them, as one script at an address that names its version."""

from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.cache import cache_control
from django.views.decorators.http import etag, require_safe

from triage.offline.page_script import page_script
from triage.offline.views.pack_bundle import A_YEAR
from triage.offline.views.packed import send_packed


def _etag_of(request: HttpRequest, version: str) -> str | None:  # noqa: ARG001  (Django's signature)
    return f'"{version}"' if version == page_script().version else None


@require_safe
@cache_control(public=True, max_age=A_YEAR, immutable=True)
@etag(_etag_of)
def pages(request: HttpRequest, version: str) -> HttpResponse:
    script = page_script()
    if version != script.version:
        raise Http404
    return send_packed(request, script.text, "text/javascript; charset=utf-8")
