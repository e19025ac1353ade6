"""Runs the proofs whose files have changed, at full depth, and writes tests/proofs.lock.

python -m tests.proofs                    those that are due
python -m tests.proofs all                every one
python -m tests.proofs walks forged       those, due or not
python -m tests.proofs --by-lot           those that are due and one drawn by lot
python -m tests.proofs --check            runs none; fails where one is due
"""

import argparse
import os
import sys
from time import monotonic


def main() -> int:
    arguments = _arguments()
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "tests.settings")
    from tests.proofs.lock import due_proofs, proof_by_lot, read_lock
    from tests.proofs.registry import BY_NAME, PROOFS
    from tests.proofs.running import run

    due = due_proofs(read_lock())
    names = ", ".join(proof.name for proof in due)
    if arguments.check:
        return _say(f"Due: {names}. Run `python -m tests.proofs` and commit tests/proofs.lock.", 1) if due else 0
    wanted = list(PROOFS) if "all" in arguments.names else [BY_NAME[name] for name in arguments.names] or due
    if arguments.by_lot and (drawn := proof_by_lot()) not in wanted:
        _say(f"Drawn by lot: {drawn.name}.")
        wanted = [*wanted, drawn]
    if not wanted:
        return _say(f"Nothing has changed that any of the {len(PROOFS)} proofs depends on.")
    _say(f"Running {', '.join(proof.name for proof in wanted)}.")
    began = monotonic()
    wrong = run(wanted)
    _show([proof.name for proof in wanted], read_lock())
    _say(f"{monotonic() - began:.0f} seconds.")
    return _say("\n".join(wrong), 1) if wrong else 0


def _show(names: list[str], entries: dict) -> None:
    for name in names:
        if name in entries:
            _say(f"{name:18}{entries[name].states:9} states {entries[name].seconds:5} s")


def _say(text: str, code: int = 0) -> int:
    sys.stdout.write(f"{text}\n")
    return code


def _arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(
        prog="python -m tests.proofs", description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("names", nargs="*")
    parser.add_argument("--by-lot", action="store_true")
    parser.add_argument("--check", action="store_true")
    return parser.parse_args()


if __name__ == "__main__":
    sys.exit(main())
