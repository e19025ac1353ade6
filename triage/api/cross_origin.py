"""Lets pages of a firm's own origins use an address from a browser (CORS, as the Fetch standard has it).

The origin is echoed exactly and never as a star, no cookie is ever sent along, and `Authorization` is not among the
headers a page may send: a key in a page would be everybody's key.
"""

from collections.abc import Callable
from functools import wraps
from typing import Any

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.utils.cache import patch_vary_headers
from django.views.decorators.csrf import csrf_exempt

from triage.api.callers import is_page_of
from triage.models import Firm

PREFLIGHT_SECONDS = 600
ALLOWED_HEADERS = "Content-Type, Idempotency-Key"
EXPOSED_HEADERS = "Location, RateLimit, RateLimit-Policy, Retry-After"

View = Callable[..., HttpResponseBase]


def from_firm_pages(method: str) -> Callable[[View], View]:
    """Answers a browser's question beforehand, and lets the firm's pages read every answer, a refusal too."""

    def wrap(view: View) -> View:
        @wraps(view)
        def answered(request: HttpRequest, firm: str, **kwargs: Any) -> HttpResponseBase:
            response = view(request, firm, **kwargs)
            patch_vary_headers(response, ("Origin",))
            origin = request.headers.get("Origin", "")
            if origin and is_page_of(Firm.objects.filter(slug=firm).first(), origin):
                response.headers["Access-Control-Allow-Origin"] = origin
                response.headers["Access-Control-Expose-Headers"] = EXPOSED_HEADERS
                if request.method == "OPTIONS":
                    response.headers["Access-Control-Allow-Methods"] = method
                    response.headers["Access-Control-Allow-Headers"] = ALLOWED_HEADERS
                    response.headers["Access-Control-Max-Age"] = str(PREFLIGHT_SECONDS)
            return response

        return csrf_exempt(answered)

    return wrap
