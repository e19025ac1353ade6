"""Receivers of webhooks on this machine: one that answers, and those that hang, chatter, redirect or close early."""

import socket
from collections.abc import Callable
from contextlib import contextmanager
from dataclasses import dataclass, field
from threading import Event, Thread

END_OF_HEAD = b"\r\n\r\n"


@dataclass
class Receiver:
    """`behave` answers a request and may be changed. `requests` holds what came in, as (headers, body); `kept` the
    bodies by id, each once."""

    behave: Callable
    secured: Callable
    url: str = ""
    requests: list = field(default_factory=list)
    kept: dict = field(default_factory=dict)
    arrived: Event = field(default_factory=Event)
    closing: Event = field(default_factory=Event)


def answers(status, reason="Some", extra=""):
    def behave(connection, _receiver):
        connection.sendall(f"HTTP/1.1 {status} {reason}\r\nContent-Length: 0\r\n{extra}\r\n".encode())

    return behave


def hangs(_connection, receiver):
    receiver.closing.wait(30)


def closes_early(_connection, _receiver):
    """Not one byte of an answer."""


def chatters(connection, receiver):
    """A header that never ends, a little at a time, so that no single wait is long."""
    connection.sendall(b"HTTP/1.1 200 OK\r\nX-Long: ")
    while not receiver.closing.wait(0.02):
        try:
            connection.sendall(b"a")
        except OSError:
            return


def talks_nonsense(connection, _receiver):
    connection.sendall(b"\x16\x03\x01 this is no HTTP\r\n\r\n")


content = answers(204)


@contextmanager
def receiver(behave: Callable = content, secured: Callable = lambda connection: connection):
    """A receiver at `url` for as long as the block lasts; `secured` wraps a connection in TLS."""
    box = Receiver(behave=behave, secured=secured)
    with socket.create_server(("127.0.0.1", 0)) as server:
        box.url = f"http://127.0.0.1:{server.getsockname()[1]}/hook?x=1"
        Thread(target=_serve, args=(server, box), daemon=True).start()
        yield box
        box.closing.set()
        server.shutdown(socket.SHUT_RDWR)


def _serve(server, box):
    while True:
        try:
            connection, _address = server.accept()
        except OSError:
            return
        Thread(target=_one, args=(connection, box), daemon=True).start()


def _one(raw, box):
    try:
        connection = box.secured(raw)
    except OSError:  # the caller did not like the certificate
        return
    with connection:
        headers, body = read_message(connection)
        box.requests.append((headers, body))
        box.kept.setdefault(headers.get("webhook-id"), body)
        box.arrived.set()
        box.behave(connection, box)


def read_message(connection):
    """Headers, the first line among them without a name, and body. Raises ConnectionError where it was not all sent."""
    received = b""
    while END_OF_HEAD not in received:
        received += _more(connection)
    head, _, body = received.partition(END_OF_HEAD)
    first, *lines = head.decode().split("\r\n")
    headers = {"": first} | {name.lower(): value for name, value in (line.split(": ", 1) for line in lines)}
    while len(body) < int(headers.get("content-length", 0)):
        body += _more(connection)
    return headers, body


def _more(connection):
    received = connection.recv(65536)
    if not received:
        raise ConnectionResetError
    return received
