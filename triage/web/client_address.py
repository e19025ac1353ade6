"""Where a request comes from, for limits on tries.

Behind a proxy that the site trusts, it is what that proxy wrote last; anything before that the sender may have made up.
"""

from django.conf import settings
from django.http import HttpRequest


def client_address(request: HttpRequest) -> str:
    """The address of the sender; empty where a server names none."""
    header = request.headers.get("X-Forwarded-For", "") if settings.SECURE_PROXY_SSL_HEADER else ""
    last = header.rpartition(",")[2].strip()
    return last or str(request.META.get("REMOTE_ADDR", ""))
