"""The pack as it was: a folder, or a git revision of the pack this program works with, unpacked beside.

Git is called with a fixed list of arguments and never through a shell; what the author typed is only ever looked up
as the name of a commit.
"""

import io
import subprocess
import tarfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

GIT = "git"
LONGEST = 200


class NoSuchPack(ValueError):
    """Neither a folder nor a revision; the message says what to give instead."""


@contextmanager
def pack_folder(named: str, pack: Path) -> Iterator[Path]:
    """The folder that `named` stands for: itself, or `pack` as it was at that git revision, for as long as the block
    runs. Raises NoSuchPack."""
    if _is_folder(named):
        yield Path(named)
        return
    with TemporaryDirectory(prefix="pack-") as unpacked:
        yield _unpack(named, pack.resolve(), Path(unpacked))


def _is_folder(named: str) -> bool:
    try:
        return bool(named) and Path(named).is_dir()
    except (OSError, ValueError):
        return False  # a name that no folder can have


def _unpack(revision: str, pack: Path, into: Path) -> Path:
    top = _git(pack, "rev-parse", "--show-toplevel")
    if top is None:
        raise NoSuchPack(f"There is no folder {revision[:LONGEST]}, and the pack does not stand in a git repository.")
    root = Path(top.decode().strip())
    commit = None
    if revision and not revision.startswith("-") and "\0" not in revision and len(revision) <= LONGEST:
        commit = _git(root, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}")
    if commit is None:
        raise NoSuchPack(
            f"{revision[:LONGEST]!r} is neither a folder nor a git revision. Give the folder of a pack, or a commit, "
            "tag or branch such as HEAD~1; `git log -- triage/knowledge/packs` lists those that changed one."
        )
    inside = pack.relative_to(root.resolve()).as_posix()
    archive = _git(root, "archive", "--format=tar", commit.decode().strip(), "--", inside)
    if archive is None:
        raise NoSuchPack(f"At {revision[:LONGEST]} there was no pack at {inside}. Give a later revision.")
    with tarfile.open(fileobj=io.BytesIO(archive)) as tar:
        tar.extractall(into, filter="data")
    return into / inside


def _git(folder: Path, *arguments: str) -> bytes | None:
    """What git says, or None when it says no or is not there."""
    try:
        done = subprocess.run([GIT, "-C", str(folder), *arguments], capture_output=True, check=False)  # noqa: S603
    except FileNotFoundError:
        return None
    return done.stdout if done.returncode == 0 else None
