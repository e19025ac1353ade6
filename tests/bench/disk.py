"""A small disk of its own, kept in memory, that can be filled to the last byte."""

import os
import subprocess
import tempfile
from contextlib import contextmanager
from pathlib import Path

PIECES = (1 << 20, 4096, 1)


class Disk:
    def __init__(self, folder):
        self.folder = Path(folder)
        self.ballast = self.folder / "ballast"

    def fill(self):
        """Until not one byte more can be written."""
        with self.ballast.open("ab", buffering=0) as file:
            for size in PIECES:
                piece = b"\0" * size
                try:
                    while True:
                        file.write(piece)
                except OSError:  # full, for pieces of this size
                    continue

    def free(self):
        self.ballast.unlink(missing_ok=True)

    def megabytes_used(self):
        whole = os.statvfs(self.folder)
        return (whole.f_blocks - whole.f_bfree) * whole.f_frsize / 1e6


@contextmanager
def small_disk(megabytes):
    """A disk of this size. Raises RuntimeError in the system's own words where it may not be made."""
    with tempfile.TemporaryDirectory(prefix="oven-bench-") as folder:
        place = Path(folder, "disk")
        place.mkdir()
        Path(folder).chmod(0o755)  # the database's own user has to get through
        _run("mount", "-t", "tmpfs", "-o", f"size={megabytes}m", "oven-bench", str(place))
        try:
            yield Disk(place)
        finally:
            _run("umount", str(place))


def _run(*command):
    done = subprocess.run(command, check=False, capture_output=True, text=True)
    if done.returncode:
        raise RuntimeError(f"`{' '.join(command)}` was refused: {done.stderr.strip()}")
