"""Runs proofs, a file at a time for each processor, those that take longest first."""

import os
from collections import Counter
from functools import partial

import pytest

from tests.proofs.inputs import fingerprint
from tests.proofs.lock import Entry, read_lock, write_lock
from tests.proofs.registry import Proof

OPTIONS = ("--quiet", "--no-header", "-p", "no:randomly", "--dist", "loadfile", "--no-loadscope-reorder")


class Tally:
    """What the tests of each proof say: passed or not, how long they took, what they counted (`record_property`)."""

    def __init__(self, proofs: list[Proof]) -> None:
        self.owner = {test: proof.name for proof in proofs for test in proof.tests}
        self.states: Counter[str] = Counter()
        self.seconds: Counter[str] = Counter()
        self.passed: set[str] = set()
        self.failed: set[str] = set()

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        name = self.owner[report.nodeid.partition("::")[0]]
        self.seconds[name] += report.duration
        if report.when == "call":
            self.states[name] += sum(int(count) for key, count in report.user_properties if key == "states")
        (self.passed if report.passed else self.failed).add(name)

    def earned(self, proof: Proof) -> bool:
        return proof.name in self.passed - self.failed


def run(proofs: list[Proof]) -> list[str]:
    """Runs each at its full depth and writes the lock; a sentence for each that is not to be relied on."""
    before, entries = {proof.name: fingerprint(proof) for proof in proofs}, read_lock()
    tally, wrong = Tally(proofs), []
    tests = [test for proof in sorted(proofs, key=partial(_seconds, entries), reverse=True) for test in proof.tests]
    ended = pytest.main([*OPTIONS, "--numprocesses", str(os.cpu_count()), *tests], plugins=[tally])
    for proof in proofs:
        entry = Entry(before[proof.name], tally.states[proof.name], round(tally.seconds[proof.name]))
        if not tally.earned(proof):
            wrong.append(f"{proof.name} failed.")
        elif unearned := not_earned(entries.get(proof.name), entry):
            wrong.append(f"{proof.name}: {unearned}")
        elif proof.name not in entries or entries[proof.name].inputs != entry.inputs:
            entries[proof.name] = entry
    write_lock(entries)
    if ended is not pytest.ExitCode.OK and not wrong:
        wrong.append(f"pytest ended with {ended!r}.")
    return wrong


def _seconds(entries: dict[str, Entry], proof: Proof) -> int:
    return entries[proof.name].seconds if proof.name in entries else 0


def not_earned(kept: Entry | None, found: Entry) -> str:
    if kept and kept.inputs == found.inputs and kept.states != found.states:
        return f"the lock says {kept.states} states, this run met {found.states}: the lock was not earned."
    return ""
