"""The compiled pack at an address that names its version: what stands there never changes, so it is kept for ever."""

from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.cache import cache_control
from django.views.decorators.http import etag, require_safe

from triage.offline.parts import offline_pack
from triage.offline.views.brotli_response import brotli_response

A_YEAR = 31_536_000


def _etag_of(request: HttpRequest, version: str) -> str | None:  # noqa: ARG001  (Django's signature)
    return f'"{version}"' if version == offline_pack().version else None


@require_safe
@cache_control(public=True, max_age=A_YEAR, immutable=True)
@etag(_etag_of)
def pack_bundle(request: HttpRequest, version: str) -> HttpResponse:
    """The pack of exactly this version. An older one is not here any more: the phone keeps its own copy."""
    bundle = offline_pack()
    if version != bundle.version:
        raise Http404
    return brotli_response(request, bundle.text, "application/json")
