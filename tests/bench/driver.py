"""Sends requests to a site from a process of its own: `python -m tests.bench.driver FOLDER`.

The folder holds `plan.json` and `requests`; what was seen goes to standard output. With no rate, every connection asks
again as soon as it was answered. With one, requests fall due by dice at that rate (Poisson) and each is counted from
the moment it was due, so that a stall is felt by everybody behind it.
"""

import json
import random
import re
import subprocess
import sys
import tempfile
import time
from collections import Counter
from itertools import count
from pathlib import Path
from threading import Thread

from tests.bench.connection import Cut, Wire

ROOT = Path(__file__).resolve().parents[2]
CACHE = re.compile(rb"\r\nx-cache: (\w+)", re.IGNORECASE)
CONNECTIONS = 8


def drive(targets, requests, seconds, rate=None, connections=CONNECTIONS):
    """What a second process saw of the requests (bytes each), which go to the targets in turn, each at most once."""
    with tempfile.TemporaryDirectory(prefix="oven-bench-") as folder:
        started = begin_to_drive(folder, targets, requests, seconds, rate, connections)
        told, _nothing = started.communicate(timeout=seconds + 120)
    if started.returncode:
        raise RuntimeError("The load generator failed; what it says stands above.")
    return json.loads(told)


def begin_to_drive(folder, targets, requests, seconds, rate=None, connections=CONNECTIONS):
    """The second process, on its way."""
    plan = {"targets": targets, "seconds": seconds, "rate": rate, "connections": connections}
    plan["lengths"] = [len(request) for request in requests]
    Path(folder, "plan.json").write_text(json.dumps(plan))
    Path(folder, "requests").write_bytes(b"".join(requests))
    command = [sys.executable, "-m", "tests.bench.driver", str(folder)]
    return subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, text=True)


class Drive:
    """One run. Its threads share it."""

    def __init__(self, folder):
        plan = json.loads(Path(folder, "plan.json").read_text())
        self.targets, self.seconds, self.connections = plan["targets"], plan["seconds"], plan["connections"]
        self.requests = _cut(Path(folder, "requests").read_bytes(), plan["lengths"])
        self.due = due_moments(plan["rate"], len(self.requests)) if plan["rate"] else None
        self.next, self.waits, self.reopened = count(), [], 0
        self.statuses, self.cache, self.cuts = Counter(), Counter(), Counter()

    def run(self):
        self.began = time.perf_counter()
        threads = [
            Thread(target=self._ask, args=(self.targets[n % len(self.targets)],)) for n in range(self.connections)
        ]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        return {
            "seconds": time.perf_counter() - self.began,
            "waits": sorted(self.waits),
            "statuses": self.statuses,
            "cache": self.cache,
            "cuts": self.cuts,
            "reopened": self.reopened,
        }

    def _ask(self, target):
        wire = Wire(*target)
        while (number := next(self.next)) < len(self.requests):
            begins = self.began + self.due[number] if self.due else time.perf_counter()
            if begins - self.began > self.seconds:
                break
            time.sleep(max(0.0, begins - time.perf_counter()))
            self._one(wire, self.requests[number], begins)
        self.reopened += wire.reopened
        wire.close()

    def _one(self, wire, request, begins):
        try:
            answer = wire.ask(request)
        except Cut as reason:
            self.cuts[str(reason)] += 1
            return
        self.waits.append(time.perf_counter() - begins)
        self.statuses[answer.status] += 1
        told = CACHE.search(answer.head)
        if told:
            self.cache[told[1].decode()] += 1


def _cut(whole, lengths):
    found, place = [], 0
    for length in lengths:
        found.append(whole[place : place + length])
        place += length
    return found


def due_moments(rate, most):
    dice, moment, moments = random.Random("due"), 0.0, []
    for _ in range(most):
        moment += dice.expovariate(rate)
        moments.append(moment)
    return moments


if __name__ == "__main__":
    json.dump(Drive(sys.argv[1]).run(), sys.stdout)
