"""Who may show a page in a frame of their own: nobody, unless a view names their origins here.

An origin is scheme, host and port, as a browser writes it: `https://www.example.org`, without a path.
"""

import re
from collections.abc import Iterable

from django.http.response import HttpResponseBase

# What a browser itself writes: lower case, no path, no wildcard; http only to try things on one's own machine.
ORIGIN = re.compile(r"https://[a-z0-9.-]{1,253}(:[0-9]{1,5})?|http://(localhost|127\.0\.0\.1)(:[0-9]{1,5})?")


def is_origin(text: str) -> bool:
    return ORIGIN.fullmatch(text) is not None


def good_origins(origins: Iterable[object]) -> list[str]:
    """Those that are origins; what else stands in a list opens nothing."""
    return [origin for origin in origins if isinstance(origin, str) and is_origin(origin)]


def allow_frames(response: HttpResponseBase, origins: Iterable[object]) -> HttpResponseBase:
    """Lets pages of these origins, and no others, show the response in a frame."""
    listed = good_origins(origins)
    if listed:
        response._csp_replace = {"frame-ancestors": listed}  # type: ignore[attr-defined]
    return response
