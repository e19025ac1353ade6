"""Where a webhook may go: never into this machine's own networks, unless the site allows it for a trial.

The name is looked up once, every address it has must be public, and the connection is made to the address that was
checked. A name that answers differently the second time (DNS rebinding) therefore gains nothing.
"""

import ipaddress
import socket
from collections.abc import Iterator
from dataclasses import dataclass
from urllib.parse import urlsplit

from django.utils.translation import gettext as _

from triage.conf import WEBHOOK_NETWORKS

ANY = "any"
TRANSLATED = ipaddress.ip_network("64:ff9b::/96")  # RFC 6052: IPv4 inside IPv6
# Of the registries of special-purpose addresses (IANA, RFC 6890), what a Python may take for public or not know.
SPECIAL = tuple(
    map(
        ipaddress.ip_network, ("192.0.0.0/24", "192.88.99.0/24", "64:ff9b:1::/48", "100::/64", "2001::/23", "5f00::/16")
    )
)
IPAddress = ipaddress.IPv4Address | ipaddress.IPv6Address


class ForbiddenTarget(Exception):
    """This address may not be sent to; the message says why and what to do."""


@dataclass(frozen=True, slots=True)
class WebhookUrl:
    """A webhook's address, taken apart. `host` is a name or an address, without brackets."""

    secure: bool
    host: str
    port: int
    path: str

    @property
    def authority(self) -> str:
        """As the Host header names it."""
        host = f"[{self.host}]" if ":" in self.host else self.host
        usual = 443 if self.secure else 80
        return host if self.port == usual else f"{host}:{self.port}"


def parse_webhook_url(url: str) -> WebhookUrl:
    """The parts of a webhook's address. Raises NotAllowed where it is not one a site may use."""
    try:
        parts = urlsplit(url)
        port, host = parts.port, parts.hostname
    except ValueError:
        raise ForbiddenTarget(_("This is not a web address. Write it as in https://example.org/job-sheets.")) from None
    if not host or not url.isascii() or not url.isprintable() or " " in url:
        raise ForbiddenTarget(_("This is not a web address. Write it as in https://example.org/job-sheets."))
    allowed = ("https", "http") if _anywhere() else ("https",)
    if parts.scheme not in allowed:
        raise ForbiddenTarget(_("The address has to begin with https://, so that nobody can read along."))
    if parts.username is not None or parts.password is not None:
        raise ForbiddenTarget(_("Leave the user name and password out of the address; the signature proves who sends."))
    path = (parts.path or "/") + (f"?{parts.query}" if parts.query else "")
    secure = parts.scheme == "https"
    return WebhookUrl(secure, host, port or (443 if secure else 80), path)


def addresses_of(target: WebhookUrl) -> list[str]:
    """The addresses of its host, in the order to try. Raises NotAllowed where any is not public, OSError where the
    name is unknown."""
    found = socket.getaddrinfo(target.host, target.port, type=socket.SOCK_STREAM)
    addresses = list(dict.fromkeys(str(entry[4][0]) for entry in found))
    if not _anywhere() and not all(is_public(address) for address in addresses):
        raise ForbiddenTarget(_("This address leads into a private network. Use one on the public internet."))
    return addresses


def is_public(address: str) -> bool:
    """Whether an address, and every address wrapped in it, is one of the public internet."""
    try:
        whole = ipaddress.ip_address(address.split("%")[0])
    except ValueError:
        return False
    return all(_is_open(inner) for inner in _unwrapped(whole))


def _is_open(address: IPAddress) -> bool:
    special = any(address.version == network.version and address in network for network in SPECIAL)
    return address.is_global and not (special or address.is_multicast or address.is_reserved)


def _unwrapped(address: IPAddress) -> Iterator[IPAddress]:
    """The IPv4 addresses that an IPv6 address stands for (mapped, 6to4, Teredo, translated), else itself."""
    if isinstance(address, ipaddress.IPv4Address):
        yield address
        return
    inner = [address.ipv4_mapped, address.sixtofour, *(address.teredo or ())]
    if address in TRANSLATED:
        inner.append(ipaddress.IPv4Address(int(address) & 0xFFFFFFFF))
    wrapped = [one for one in inner if one is not None]
    yield from wrapped or [address]


def _anywhere() -> bool:
    return WEBHOOK_NETWORKS.value() == ANY
