"""One HTTP POST to a receiver that may be slow, broken or hostile. Nothing it sends back is trusted or kept.

No redirect is followed: it would lead past the check of the address. The whole exchange has one deadline, after which
the connection is cut however busily the receiver still talks.
"""

import http.client
import socket
import ssl
from collections.abc import Mapping
from threading import Timer

from django.utils.translation import gettext as _

from triage.jobsheet.networks import ForbiddenTarget, WebhookUrl, addresses_of, parse_webhook_url

DEADLINE = 15.0
CONNECT = 5.0
GONE = 410


class NotDelivered(Exception):
    """The receiver does not have it, or did not say so. `permanent`: trying again cannot help."""

    def __init__(self, sentence: str, *, permanent: bool = False) -> None:
        super().__init__(sentence)
        self.permanent = permanent


def post(url: str, headers: Mapping[str, str], body: bytes, deadline: float = DEADLINE) -> None:
    """Return once the receiver has answered 2xx; raise NotDelivered otherwise."""
    try:
        target = parse_webhook_url(url)
        status = _status_of(target, addresses_of(target), headers, body, deadline)
    except ForbiddenTarget as reason:
        raise NotDelivered(str(reason), permanent=True) from reason
    except socket.gaierror:
        raise NotDelivered(_("The name of the receiver was not found.")) from None
    except ssl.SSLError:
        raise NotDelivered(_("The receiver's certificate is not valid.")) from None
    except TimeoutError:
        raise NotDelivered(_("The receiver did not answer in time.")) from None
    except (OSError, http.client.HTTPException):
        raise NotDelivered(_("The receiver cannot be reached or closed the connection early.")) from None
    if status == GONE:
        raise NotDelivered(_("The receiver answered 410: it wants no more messages."), permanent=True)
    if 300 <= status < 400:
        raise NotDelivered(_("The receiver answered %(status)s, and redirects are not followed.") % {"status": status})
    if not 200 <= status < 300:
        raise NotDelivered(_("The receiver answered %(status)s.") % {"status": status})


def _status_of(
    target: WebhookUrl, addresses: list[str], headers: Mapping[str, str], body: bytes, deadline: float
) -> int:
    stream = _connected(target, addresses, min(CONNECT, deadline))
    cut = _Deadline(stream, deadline)
    try:
        if target.secure:
            stream = _secured(stream, target)
        stream.settimeout(deadline)
        connection = http.client.HTTPConnection(target.host, target.port)
        connection.sock = stream
        connection.request("POST", target.path, body, {**headers, "Host": target.authority, "Connection": "close"})
        status = connection.getresponse().status
        if cut.done:  # headers that were cut short read like headers that ended
            raise TimeoutError
        return status
    except (OSError, http.client.HTTPException):
        if cut.done:
            raise TimeoutError from None
        raise
    finally:
        cut.cancel()
        stream.close()


def _connected(target: WebhookUrl, addresses: list[str], seconds: float) -> socket.socket:
    """A connection to the first address that takes one. Raises the last OSError."""
    last: OSError = OSError("no address")
    for address in addresses:
        try:
            return socket.create_connection((address, target.port), timeout=seconds)
        except OSError as problem:
            last = problem
    raise last


def _secured(raw: socket.socket, target: WebhookUrl) -> ssl.SSLSocket:
    return ssl.create_default_context().wrap_socket(raw, server_hostname=target.host)


class _Deadline:
    """Shuts a connection when its time is over. A receiver that sends one byte a second never times out by itself."""

    def __init__(self, raw: socket.socket, seconds: float) -> None:
        self.done = False
        # TLS takes the socket over and detaches `raw`; the copy of its descriptor still reaches the connection.
        self.copy = raw.dup()
        self.timer = Timer(seconds, self._shut)
        self.timer.daemon = True
        self.timer.start()

    def _shut(self) -> None:
        self.done = True
        try:
            self.copy.shutdown(socket.SHUT_RDWR)
        except OSError:
            return  # it is closed already

    def cancel(self) -> None:
        self.timer.cancel()
        self.copy.close()
