"""A text that never changes, as small as the browser can take it.

The whole check has to fit into little: Brotli takes a sixth less than gzip. It is slow at that, so each text is
compressed once. A browser that does not know it gets the text as it is, which the site's own compression then packs.
"""

import re
from functools import lru_cache

import brotli  # type: ignore[import-untyped]
from django.http import HttpRequest, HttpResponse
from django.utils.cache import patch_vary_headers

ACCEPTS_BROTLI = re.compile(r"\bbr\b(?!\s*;\s*q=0(\.0*)?\s*(,|$))")
MAX_TEXTS = 8


@lru_cache(MAX_TEXTS)
def compress(text: str) -> bytes:
    return bytes(brotli.compress(text.encode()))


def brotli_response(request: HttpRequest, text: str, content_type: str) -> HttpResponse:
    takes_it = ACCEPTS_BROTLI.search(request.headers.get("Accept-Encoding", ""))
    response = HttpResponse(compress(text) if takes_it else text, content_type=content_type)
    if takes_it:
        response.headers["Content-Encoding"] = "br"
    patch_vary_headers(response, ("Accept-Encoding",))
    return response
