"""A firm's own system that takes messages as the contract says, and has its bad days.

It stores each message once by its id, checks every signature, and counts what came again.
"""

import base64
import hashlib
import hmac
import json
import socket
import time
from collections import Counter
from contextlib import contextmanager
from threading import Event, Lock, Thread

from tests.jobsheet.receivers import read_message

STALE_SECONDS = 300  # the contract says: refuse what is stamped further off
LONGEST_SILENCE = 40
TAKEN = b"HTTP/1.1 204 No Content\r\n\r\n"
STALE = b"HTTP/1.1 400 Stale\r\nContent-Length: 0\r\n\r\n"
BROKEN = b"HTTP/1.1 500 Broken\r\nContent-Length: 0\r\n\r\n"

# What a mood does with a message: whether it is stored, how long that takes, what is answered.
FAULT_MODES = {
    "content": (True, 0, TAKEN),
    "slow": (True, 2, TAKEN),
    "answering 500": (False, 0, BROKEN),
    "storing it and answering 500": (True, 0, BROKEN),
    "closing early": (False, 0, b""),
    "storing it and closing early": (True, 0, b""),
    "talking nonsense": (False, 0, b"\x16\x03\x01 this is no HTTP\r\n\r\n"),
    "hanging": (False, LONGEST_SILENCE, b""),
}
DEAD = "dead"


class FlakyReceiver:
    """`arrived` holds the reference each message was about; `prints` what its bytes were."""

    def __init__(self):
        self.arrived, self.prints, self.counts = {}, {}, Counter()
        self.lock, self.changed, self.secrets = Lock(), Event(), []
        self._listen(("127.0.0.1", 0))
        self.place = self.server.getsockname()
        self.mood = "content"

    @property
    def url(self):
        return f"http://127.0.0.1:{self.place[1]}/"

    def become(self, mood):
        """Dead is when nothing listens any more."""
        if self.mood == DEAD != mood:
            self._listen(self.place)
        was, self.mood = self.mood, mood
        if mood == DEAD != was:
            self.close()
        self.changed.set()  # whoever hung goes on
        self.changed = Event()

    def close(self):
        self.server.shutdown(socket.SHUT_RDWR)
        self.server.close()

    def _listen(self, place):
        self.server = socket.create_server(place, reuse_port=False)
        Thread(target=self._serve, args=(self.server,), daemon=True).start()

    def _serve(self, server):
        while True:
            try:
                connection, _address = server.accept()
            except OSError:
                return
            Thread(target=self._one, args=(connection,), daemon=True).start()

    def _one(self, connection):
        stores, seconds, answer = FAULT_MODES.get(self.mood, FAULT_MODES["closing early"])
        with connection:
            try:
                headers, body = read_message(connection)
                if seconds:
                    self.changed.wait(seconds)
                if abs(time.time() - int(headers["webhook-timestamp"])) > STALE_SECONDS:
                    self.counts["refused for its stamp"] += 1
                    stores, answer = False, STALE
                if stores:
                    self._store(headers, body)
                if answer:
                    connection.sendall(answer)
            except OSError:  # the sender went away
                self.counts["senders that went away"] += 1

    def _store(self, headers, body):
        message, stamp = headers["webhook-id"], headers["webhook-timestamp"]
        secret = self.secrets[int(headers[""].split()[1].lstrip("/"))]
        key = base64.b64decode(secret.removeprefix("whsec_"))
        signed = hmac.new(key, b".".join((message.encode(), stamp.encode(), body)), hashlib.sha256).digest()
        with self.lock:
            self.counts["messages"] += 1
            self.counts["came again"] += message in self.arrived
            self.counts["wrong signature"] += headers["webhook-signature"] != f"v1,{base64.b64encode(signed).decode()}"
            digest = hashlib.sha256(body).digest()
            self.counts["came again with other bytes"] += self.prints.setdefault(message, digest) != digest
            self.arrived[message] = json.loads(body)["data"]["reference"]


@contextmanager
def flaky_receiver():
    receiver = FlakyReceiver()
    try:
        yield receiver
    finally:
        if receiver.mood != DEAD:
            receiver.close()
