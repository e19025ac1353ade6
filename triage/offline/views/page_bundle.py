"""What the phone's pages are made of, in the language the address's version was made in."""

from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.cache import cache_control
from django.views.decorators.http import etag, require_safe

from triage.knowledge.library import library
from triage.offline.page_bundle import PageBundle, build_page_bundle
from triage.offline.views.brotli_response import brotli_response
from triage.offline.views.pack_bundle import A_YEAR


def _bundle(version: str) -> PageBundle | None:
    every = (build_page_bundle(language) for language in library().texts)
    return next((bundle for bundle in every if bundle.version == version), None)


def _etag_of(request: HttpRequest, version: str) -> str | None:  # noqa: ARG001  (Django's signature)
    return f'"{version}"' if _bundle(version) else None


@require_safe
@cache_control(public=True, max_age=A_YEAR, immutable=True)
@etag(_etag_of)
def page_bundle(request: HttpRequest, version: str) -> HttpResponse:
    bundle = _bundle(version)
    if bundle is None:
        raise Http404
    return brotli_response(request, bundle.text, "application/json")
