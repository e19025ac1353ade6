"""Compression for pages that hold no secret.

Compression leaks a secret where one response holds both the secret and a stranger's words (the BREACH attack). A
check's page holds the asker's own answers and nothing else. A page with a name, an address or a token on it says
`no-store`, and what may not be stored is not compressed either.
"""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.middleware.gzip import GZipMiddleware


class OpenPagesGZipMiddleware(GZipMiddleware):
    def process_response(self, request: HttpRequest, response: HttpResponseBase) -> HttpResponseBase:
        if "no-store" in response.headers.get("Cache-Control", ""):
            return response
        return super().process_response(request, response)
