"""How many steps of each kind this site's processes have answered.

A process counts in a piece of memory of its own. With a folder (TRIAGE_METRICS_FOLDER) that memory is a file in it, so
whichever process is asked can add up all of them on this host, those that were killed too; without one it knows itself
alone. Nothing is written to a database: a question page asks none.
"""

import mmap
import os
import struct
import uuid
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from threading import Lock
from zlib import crc32

from triage.conf import METRICS_FOLDER

NO_FOLDER = "none"
WAYS = ("page", "api")
KINDS = (
    *("start", "danger", "question", "make_safe", "advice", "task", "reading", "exit", "costs"),
    "other",
)
SLOTS = tuple((way, kind) for way in WAYS for kind in KINDS)
PLACES = {slot: number for number, slot in enumerate(SLOTS)}
NUMBER = struct.Struct("<Q")
SIZE = NUMBER.size * len(SLOTS)
# A release that counts other things does not read the files of this one.
ENDING = f".steps-{crc32(repr(SLOTS).encode()):08x}"

Counts = dict[tuple[str, str], int]


class StepCounts:
    """One process' counts; its threads share them."""

    def __init__(self, folder: str) -> None:
        self.worker = f"{os.getpid()}-{uuid.uuid4().hex[:6]}"
        self._memory = _file_in(Path(folder), self.worker) if folder != NO_FOLDER else mmap.mmap(-1, SIZE)
        self._lock = Lock()

    def add(self, way: str, kind: str) -> None:
        place = NUMBER.size * PLACES[way, kind if kind in KINDS else "other"]
        with self._lock:
            NUMBER.pack_into(self._memory, place, NUMBER.unpack_from(self._memory, place)[0] + 1)

    def read(self) -> Counts:
        return _counts_in(self._memory[:])


def count_step(way: str, kind: str) -> None:
    _own(METRICS_FOLDER.value(), os.getpid()).add(way, kind)


def counts_by_worker() -> Iterator[tuple[str, Counts]]:
    """The counts of every process of this host that can be seen, by a name each has to itself."""
    folder = METRICS_FOLDER.value()
    own = _own(folder, os.getpid())
    if folder == NO_FOLDER:
        yield own.worker, own.read()
        return
    for path in sorted(Path(folder).glob(f"*{ENDING}")):
        told = path.read_bytes()
        if len(told) == SIZE:
            yield path.name.removesuffix(ENDING), _counts_in(told)


@cache
def _own(folder: str, process: int) -> StepCounts:  # noqa: ARG001  (a fork gets its own)
    return StepCounts(folder)


def _file_in(folder: Path, worker: str) -> mmap.mmap:
    folder.mkdir(parents=True, exist_ok=True)
    with (folder / f"{worker}{ENDING}").open("x+b") as file:
        file.truncate(SIZE)
        return mmap.mmap(file.fileno(), SIZE)


def _counts_in(told: bytes) -> Counts:
    return {slot: NUMBER.unpack_from(told, NUMBER.size * place)[0] for slot, place in PLACES.items()}
