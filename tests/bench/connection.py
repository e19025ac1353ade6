"""One kept HTTP connection, with as little of our own processor time in it as can be: it shares the machine with what
it measures."""

import re
import socket
from dataclasses import dataclass

LENGTH = re.compile(rb"\r\ncontent-length: *(\d+)", re.IGNORECASE)
END_OF_HEAD = b"\r\n\r\n"
HOST = "127.0.0.1"


class Cut(Exception):
    """The connection ended without an answer."""


@dataclass(frozen=True)
class Answer:
    status: int
    head: bytes
    body: bytes


class Wire:
    """`reopened` counts kept connections that the server had closed by the time they were used again: a browser sends
    such a request once more by itself, and so does this."""

    def __init__(self, host, port, timeout=30):
        self.place, self.timeout, self.stream, self.reopened = (host, port), timeout, None, 0

    def ask(self, request):
        """The answer to a request given as bytes. Raises Cut."""
        kept = self.stream is not None
        try:
            return self._exchange(request)
        except ConnectionError as reason:
            self.close()
            if not kept:
                raise Cut(type(reason).__name__) from reason
            self.reopened += 1
        except OSError as reason:
            self.close()
            raise Cut(type(reason).__name__) from reason
        return self.ask(request)

    def close(self):
        if self.stream:
            self.stream.close()
        self.stream = None

    def _exchange(self, request):
        if self.stream is None:
            self.stream = socket.create_connection(self.place, self.timeout)
            self.stream.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        self.stream.sendall(request)
        received = b""
        while END_OF_HEAD not in received:
            received += self._more()
        head, _, body = received.partition(END_OF_HEAD)
        length = LENGTH.search(head)
        missing = (int(length[1]) if length else 0) - len(body)
        parts = [body]
        while missing > 0:
            parts.append(self._more())
            missing -= len(parts[-1])
        if b"\r\nconnection: close" in head.lower():
            self.close()
        return Answer(int(head[9:12]), head, b"".join(parts))

    def _more(self):
        received = self.stream.recv(65536)
        if not received:
            raise ConnectionResetError
        return received


def get(address, *, packed=True):
    """As a browser that has not seen the page before."""
    accepts = "Accept-Encoding: gzip\r\n" if packed else ""
    return f"GET {address} HTTP/1.1\r\nHost: {HOST}\r\n{accepts}Accept-Language: en\r\n\r\n".encode()


def post(address, body=b"", **headers):
    more = "".join(f"{name.replace('_', '-')}: {value}\r\n" for name, value in headers.items())
    head = f"POST {address} HTTP/1.1\r\nHost: {HOST}\r\nContent-Length: {len(body)}\r\n{more}\r\n"
    return head.encode() + body
