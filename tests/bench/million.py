"""What a million checks cost, by arithmetic from what one run measured."""

import resource
import subprocess
import sys
import time
from dataclasses import dataclass

from tests.bench.ledger import waiting
from tests.bench.output import say
from tests.bench.server import ROOT, process_environment

CHECKS = 1_000_000
# What the arithmetic takes for granted; another site has other shares.
STEPS_A_CHECK, HAND_OVERS_A_CHECK = 8, 0.08


@dataclass
class Million:
    """Processor seconds of a step made anew, a hand-over and a delivery, the database's included; what a cache in front
    answers; and what a sheet takes there."""

    step: float = 0.0
    hand_over: float = 0.0
    delivery: float = 0.0
    hit_rate: float = 0.0
    bytes_a_sheet: float = 0.0

    def processor_hours(self):
        steps = STEPS_A_CHECK * (1 - self.hit_rate) * self.step
        return CHECKS * (steps + HAND_OVERS_A_CHECK * (self.hand_over + self.delivery)) / 3600

    def gigabytes(self):
        return CHECKS * HAND_OVERS_A_CHECK * self.bytes_a_sheet / 1e9

    def show(self):
        say(f"A million checks of {STEPS_A_CHECK} steps, {HAND_OVERS_A_CHECK:.0%} of them handed over, by arithmetic")
        say(f"  {'a step made anew':<34}{1000 * self.step:8.2f} ms")
        say(f"  {'a hand-over':<34}{1000 * self.hand_over:8.2f} ms")
        say(f"  {'a delivery':<34}{1000 * self.delivery:8.2f} ms")
        say(f"  {'answered by the cache in front':<34}{100 * self.hit_rate:8.1f} %")
        say(f"  {'processor time':<34}{self.processor_hours():8.1f} hours")
        say(f"  {'a job sheet without a photo':<34}{self.bytes_a_sheet:8.0f} bytes")
        say(f"  {'database growth':<34}{self.gigabytes():8.2f} GB")


def send_waiting(url):
    """Sends what waits with one delivery worker; its processor seconds a message come back. The database's own part is
    not in them."""
    count, began = waiting(url), time.monotonic()
    command = [sys.executable, "manage.py", "send_deliveries", "--once"]
    chosen = process_environment(DATABASE_URL=url, TRIAGE_WEBHOOK_NETWORKS="any")
    before = children_seconds()
    subprocess.run(command, cwd=ROOT, env=chosen, stdout=subprocess.DEVNULL, check=True)
    spent, seconds = children_seconds() - before, time.monotonic() - began
    left = waiting(url)
    if left:
        raise RuntimeError(f"The delivery worker left {left} of {count} messages.")
    say(f"One delivery worker: {count} messages in {seconds:.1f} s, {count / seconds:.0f} a second")
    say(f"  {'processor time a message':<34}{1000 * spent / count:8.2f} ms")
    return spent / count


def children_seconds():
    """Processor time of all processes of ours that have ended."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime
