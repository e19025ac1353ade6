"""`tests/proofs.lock`: for each proof the hash of the files it was run on, how much it looked at, and how long it took.

The file is written by the run that earned it and by nobody else. Numbers of states are the same in every run on the
same files, so a run that counts others than the lock says finds a lock that was not earned.
"""

import json
from dataclasses import asdict, dataclass
from pathlib import Path

from tests.proofs.inputs import fingerprint, hash_of
from tests.proofs.registry import PROOFS, Proof
from tests.whole_site.project_files import ROOT, project_files

LOCK = ROOT / "tests" / "proofs.lock"


@dataclass(frozen=True)
class Entry:
    """`states` counts steps, pages, trails or inputs, whatever the proof looks at."""

    inputs: str
    states: int
    seconds: int


def read_lock(file: Path = LOCK) -> dict[str, Entry]:
    if not file.exists():
        return {}
    return {name: Entry(**entry) for name, entry in json.loads(file.read_text("utf-8")).items()}


def write_lock(entries: dict[str, Entry], file: Path = LOCK) -> None:
    """A proof a line, so that two branches that ran different proofs seldom touch the same line."""
    lines = [f'  "{name}": {json.dumps(asdict(entries[name]))}' for name in sorted(entries)]
    file.write_text("{\n" + ",\n".join(lines) + "\n}\n", "utf-8")


def due_proofs(entries: dict[str, Entry], root: Path = ROOT) -> list[Proof]:
    """Those whose files are not those of the lock."""
    earned = {name: entry.inputs for name, entry in entries.items()}
    return [proof for proof in PROOFS if earned.get(proof.name) != fingerprint(proof, root)]


def proof_by_lot(root: Path = ROOT) -> Proof:
    """Drawn by the hash of the whole project, so that every commit draws anew and nobody can choose."""
    return PROOFS[int(hash_of(root, project_files(root)), 16) % len(PROOFS)]
