"""What fuzzing feeds: something that reads what a stranger wrote, with a few good inputs of it."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True)
class Parser:
    """`refuses` are the exceptions that are its own words."""

    read: Callable[[bytes], object]
    good: Sequence[bytes]
    refuses: tuple[type[Exception], ...] = ()


def on_file(read, folder):
    """A parser of files as one of what stands in them."""
    path = Path(folder) / "fuzzed.yaml"

    def read_from(item):
        path.write_bytes(item)
        return read(path)

    return read_from
