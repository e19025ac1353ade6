"""Hand-overs that go on whatever happens: each is sent under one key until it is acknowledged, as the API asks.

Some are sent once more although they were acknowledged, as an impatient sender would. Beside them somebody looks at
pages, and everything that is not the page or the acknowledgement is written down as the person saw it.
"""

import json
import random
import re
import time
from collections import Counter, defaultdict
from itertools import cycle
from threading import Event, Lock, Thread

from tests.bench.people import hand_over
from tests.bench.wire import HOST, Cut, Wire

SENDERS = 6
PAUSE, LONGEST_PAUSE = 0.2, 2.0
SENT_AGAIN = 0.05
LOOK_EVERY = 0.3
WORDLESS = "without a sentence: "
HEADING = re.compile(r"<h1[^>]*>(.*?)</h1>", re.DOTALL)


class Flow:
    """`stage` is what is going on now; `seen` counts what people saw by stage, `gaps` is the longest time in each
    without an acknowledgement."""

    def __init__(self, port, firms, trails, wanted, pages):
        self.port, self.firms, self.trails, self.wanted, self.pages = port, cycle(firms), cycle(trails), wanted, pages
        self.acknowledged, self.refused, self.differing = {}, [], 0
        self.stage, self.seen, self.gaps, self.last = "nothing", Counter(), defaultdict(float), time.monotonic()
        self.reopened, self.begun, self.lock, self.over = 0, 0, Lock(), Event()
        self.senders = [Thread(target=self._send, daemon=True) for _ in range(SENDERS)]
        self.watcher = Thread(target=self._look, daemon=True)

    def start(self):
        self.last = time.monotonic()
        for thread in (*self.senders, self.watcher):
            thread.start()

    def wait_for(self, count, seconds):
        """Until so many are acknowledged. Raises RuntimeError where that takes too long."""
        give_up = time.monotonic() + seconds
        while len(self.acknowledged) < min(count, self.wanted):
            if time.monotonic() > give_up:
                told = f"{len(self.acknowledged)} of {count} hand-overs were acknowledged in {seconds} s"
                raise RuntimeError(f"{told}, in the stage: {self.stage}. {self.seen}")
            time.sleep(0.05)

    def finish(self, seconds):
        self.wait_for(self.wanted, seconds)
        for thread in self.senders:
            thread.join(timeout=60)
        self.over.set()
        self.watcher.join(timeout=60)

    def _next(self):
        with self.lock:
            if self.begun >= self.wanted:
                return None
            self.begun += 1
            return hand_over(next(self.firms), next(self.trails))

    def _send(self):
        wire = Wire("127.0.0.1", self.port, timeout=30)
        while (one := self._next()) is not None:
            key, request = one
            reference = self._until_acknowledged(wire, request)
            with self.lock:
                self.acknowledged[key] = reference
                self.gaps[self.stage] = max(self.gaps[self.stage], time.monotonic() - self.last)
                self.last = time.monotonic()
            if random.random() < SENT_AGAIN and self._until_acknowledged(wire, request) != reference:
                self.differing += 1
        self.reopened += wire.reopened

    def _until_acknowledged(self, wire, request):
        pause = PAUSE
        while True:
            try:
                answer = wire.ask(request)
            except Cut:
                self._saw("the API", "no answer")
            else:
                if answer.status in (200, 201):
                    return json.loads(answer.body)["reference"]
                self._saw("the API", words_of(answer))
                if 400 <= answer.status < 500 and answer.status != 429:
                    self.refused.append(words_of(answer))
                    return None
            time.sleep(pause)
            pause = min(LONGEST_PAUSE, pause * 1.5)

    def _look(self):
        pages = cycle(self.pages.items())
        while not self.over.wait(LOOK_EVERY):
            name, address = next(pages)
            wire = Wire("127.0.0.1", self.port, timeout=30)
            try:
                answer = wire.ask(f"GET {address} HTTP/1.1\r\nHost: {HOST}\r\nConnection: close\r\n\r\n".encode())
            except Cut:
                self._saw(name, "no answer")
            else:
                if answer.status != 200:
                    self._saw(name, words_of(answer))
            wire.close()

    def _saw(self, where, words):
        with self.lock:
            self.seen[self.stage, where, words] += 1


def words_of(answer):
    """What a person or their program reads in an answer that is not the one they wanted."""
    text = answer.body.decode("utf-8", "replace")
    if b"problem+json" in answer.head:
        return f"{answer.status}: {json.loads(text)['detail']}"
    heading = HEADING.search(text)
    return f"{answer.status}: {heading[1].strip() if heading else WORDLESS + text[:80]}"
