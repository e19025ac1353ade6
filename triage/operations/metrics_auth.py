"""Who may read the metrics: chosen addresses and networks, or who shows the token. At first, nobody."""

import ipaddress
from collections.abc import Iterator

from django.http import HttpRequest
from django.utils.crypto import constant_time_compare

from triage.conf import METRICS_ALLOWED_NETWORKS, METRICS_TOKEN
from triage.web.client_address import client_address

NOBODY = NO_TOKEN = "none"  # noqa: S105  (the word that means there is no token)
MIN_TOKEN_LENGTH = 32

Network = ipaddress.IPv4Network | ipaddress.IPv6Network


def may_read_metrics(request: HttpRequest) -> bool:
    return _comes_from_there(client_address(request)) or _shows_token(request.headers.get("Authorization", ""))


def networks() -> Iterator[Network]:
    """The chosen networks. Raises ValueError where one is none."""
    chosen = METRICS_ALLOWED_NETWORKS.value()
    for entry in () if chosen == NOBODY else chosen.split(","):
        yield ipaddress.ip_network(entry.strip())


def _comes_from_there(address: str) -> bool:
    try:
        known = ipaddress.ip_address(address)
    except ValueError:
        return False
    return any(known in network for network in networks())


def _shows_token(header: str) -> bool:
    token = METRICS_TOKEN.value()
    scheme, _space, secret = header.partition(" ")
    return token != NO_TOKEN and scheme.lower() == "bearer" and constant_time_compare(secret.strip(), token)
