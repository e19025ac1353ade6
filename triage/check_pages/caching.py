"""What a cache on the way may keep. A page is a pure function of its address, so any cache may hold it.

The ETag names the pack and the page's own bytes: a page changes with the knowledge and with the templates. Freshness
is short because a safety text that was put right has to reach people within minutes.
"""

from hashlib import sha256

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.utils.cache import get_conditional_response, patch_cache_control, patch_vary_headers

from triage.check_pages.request import CheckRequest

FRESH_SECONDS = 300


def let_caches_keep(request: HttpRequest, response: HttpResponse, check_request: CheckRequest) -> HttpResponseBase:
    """The response with its cache headers, or 304 when the browser already has it."""
    digest = sha256(response.content).hexdigest()[:16]
    response.headers["ETag"] = f'"{check_request.pack.version}-{digest}"'
    patch_cache_control(response, public=True, max_age=FRESH_SECONDS)
    if not check_request.region_named:
        patch_vary_headers(response, ("Accept-Language",))
    return get_conditional_response(request, etag=response.headers["ETag"], response=response) or response
