"""Hand-overs that go on whatever happens, each sent under one key until it is acknowledged: by firms' own systems
through the API, and by householders who fill in the form and press "send" again.

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

from tests.bench.connection import Cut, Wire, get
from tests.bench.workload import REGION, filled_in, form_for, hand_over, reference_in

SYSTEMS, HOUSEHOLDERS = 5, 1
PAUSE, LONGEST_PAUSE = 0.2, 2.0
SENT_AGAIN = 0.05
LOOK_EVERY = 0.3
LOOKED_AT = {"a question page": f"/check/?region={REGION}&complaint=no-heat&danger=none", "the first page": "/"}
CALM = "nothing"
FORM, API = "the form", "the API"
SILENCE = "no answer"
WORDLESS = "without a sentence: "
HEADING = re.compile(r"<h1[^>]*>(.*?)</h1>", re.DOTALL)


class Flow:
    """`stage` is what is going on now; `seen` counts what people saw by stage, `gaps` is the longest time in each
    without an acknowledgement. `acknowledged` holds references by key."""

    def __init__(self, port, firms, trails):
        self.port, self.firms, self.trails = port, cycle(firms), cycle(trails)
        self.acknowledged, self.by_form, self.refused, self.differing, self.reopened = {}, 0, [], 0, 0
        self.stage, self.seen, self.gaps, self.last = CALM, Counter(), defaultdict(float), time.monotonic()
        self.lock, self.over = Lock(), Event()
        deeds = [self._system] * SYSTEMS + [self._householder] * HOUSEHOLDERS + [self._look]
        self.people = [Thread(target=deed, daemon=True) for deed in deeds]

    def start(self):
        self.last = time.monotonic()
        for person in self.people:
            person.start()

    def wait_for(self, more, seconds):
        """Until so many more are acknowledged. Raises RuntimeError where that takes too long."""
        began, give_up = len(self.acknowledged), time.monotonic() + seconds
        while len(self.acknowledged) < began + more:
            if time.monotonic() > give_up:
                told = f"{len(self.acknowledged) - began} of {more} hand-overs were acknowledged in {seconds} s"
                raise RuntimeError(f"{told}, in the stage: {self.stage}. {self.seen}")
            time.sleep(0.05)

    def finish(self):
        """Everybody ends once what they have begun is acknowledged."""
        self.over.set()
        for person in self.people:
            person.join(timeout=120)

    def _one(self):
        with self.lock:
            return next(self.firms), next(self.trails)

    def _system(self):
        wire = self._wire()
        while not self.over.is_set():
            self._send(wire, API, *hand_over(*self._one()))
        self._hang_up(wire)

    def _householder(self):
        wire = self._wire()
        while not self.over.is_set():
            address, request = form_for(*self._one())
            page = self._until(wire, FORM, request, lambda answer: answer.body if answer.status == 200 else None)
            form = filled_in(address, page or b"")
            if form is None:  # this check is none to hand over, such as one that was put right
                continue
            self._send(wire, FORM, *form)
            self.by_form += 1
        self._hang_up(wire)

    def _send(self, wire, where, key, request):
        reference = self._until(wire, where, request, reference_in)
        with self.lock:
            self.acknowledged[key] = reference
            self.gaps[self.stage] = max(self.gaps[self.stage], time.monotonic() - self.last)
            self.last = time.monotonic()
        if random.random() < SENT_AGAIN:
            self.differing += self._until(wire, where, request, reference_in) != reference

    def _until(self, wire, where, request, wanted):
        """What `wanted` finds in an answer, however often it takes; None where the answer is a refusal for good."""
        pause = PAUSE
        while True:
            answer, found = self._ask(wire, where, request, wanted)
            if found:
                return found
            if answer and 400 <= answer.status < 500 and answer.status != 429:
                self.refused.append(words_of(answer))
                return None
            time.sleep(pause)
            pause = min(LONGEST_PAUSE, pause * 1.5)

    def _look(self):
        pages = cycle(LOOKED_AT.items())
        while not self.over.wait(LOOK_EVERY):
            name, address = next(pages)
            wire = self._wire()
            self._ask(wire, name, get(address, packed=False), lambda answer: answer.status == 200)
            wire.close()

    def _wire(self):
        return Wire("127.0.0.1", self.port)

    def _hang_up(self, wire):
        wire.close()
        with self.lock:
            self.reopened += wire.reopened

    def _ask(self, wire, where, request, wanted):
        """The answer, if there was one, and what `wanted` finds in it. Anything else is written down, under what was
        going on when it was asked or else when it was answered."""
        stage, answer, found = self.stage, None, None
        try:
            answer = wire.ask(request)
            found, words = wanted(answer), words_of(answer)
        except Cut:
            words = SILENCE
        if not found:
            with self.lock:
                self.seen[self.stage if stage == CALM else stage, where, words] += 1
        return answer, found


def words_of(answer):
    """What a person or their program reads in an answer that is not the one they wanted."""
    text = answer.body.decode("utf-8", "replace")
    if "Traceback" in text:
        return f"{answer.status}: {WORDLESS}a traceback"
    if b"problem+json" in answer.head:
        return f"{answer.status}: {json.loads(text)['detail']}"
    heading = HEADING.search(text)
    return f"{answer.status}: {heading[1].strip() if heading else WORDLESS + text[:80]}"
