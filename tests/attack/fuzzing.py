"""`python -m tests.attack.fuzzing --n 200000` feeds every parser inputs nobody meant, and tells each that broke one.

The dice start at `--dice`, so that a run can be had again. Of the inputs every parser gets its share by what one costs.
"""

import argparse
import os
import sys
import tempfile
import warnings
from dataclasses import dataclass, field
from random import Random
from time import monotonic

from tests.attack.mutating import mutated

SLOW = {
    "step": 0.1,
    "hand-over form": 0.5,
    "photo": 0.5,
    "settings form": 0.3,
    "case file": 0.5,
    "overlay": 0.3,
    "YAML": 0.3,
    "outcomes": 0.3,
    "pack": 0.2,
    "region": 0.2,
}
BROKEN_SHOWN = 5


@dataclass
class Tally:
    """What became of a parser's inputs; `broken` holds some that broke it, with the exception."""

    taken: int = 0
    refused: int = 0
    broken: list = field(default_factory=list)

    @property
    def count(self):
        return self.taken + self.refused + len(self.broken)


def shares(names, total):
    """How many of `total` inputs each parser gets; at least one, and all of them together exactly `total` or more."""
    weights = {name: SLOW.get(name, 1.0) for name in names}
    return {name: -int(-total * weight // sum(weights.values())) for name, weight in weights.items()}


def fuzz(parsers, wanted, dice_start):
    """The tallies by parser; `wanted` says how many inputs each gets."""
    return {name: _fuzz_one(parser, wanted[name], Random(f"{dice_start} {name}")) for name, parser in parsers.items()}


def _fuzz_one(parser, count, dice):
    tally = Tally()
    for _ in range(count):
        result = mutated(dice, dice.choice(parser.good))
        try:
            parser.read(result)
        except parser.refuses:
            tally.refused += 1
        except Exception as mistake:
            tally.broken.append((result, mistake))
        else:
            tally.taken += 1
    return tally


def report(tallies, seconds):
    for name, tally in tallies.items():
        came = f"{tally.taken} taken, {tally.refused} refused, {len(tally.broken)} broke it"
        yield f"{name:16} {tally.count:8} inputs: {came}"
        for text, mistake in tally.broken[:BROKEN_SHOWN]:
            yield f"    {text[:120]!r}: {type(mistake).__name__}: {str(mistake)[:200]}"
    yield f"{sum(tally.count for tally in tallies.values())} inputs in {seconds:.0f} seconds."


def main():
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--n", type=int, default=200_000, help="how many inputs in all")
    asked.add_argument("--each", type=int, help="how many inputs for every parser alike, in place of --n")
    asked.add_argument("--dice", type=int, default=1, help="where the dice start")
    result = asked.parse_args()
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "tests.settings")
    import django

    django.setup()
    from tests.attack.parsers import parsers

    warnings.simplefilter("error")
    began = monotonic()
    with tempfile.TemporaryDirectory() as folder:
        known = parsers(folder)
        wanted = dict.fromkeys(known, result.each) if result.each else shares(known, result.n)
        tallies = fuzz(known, wanted, result.dice)
    sys.stdout.write("".join(f"{line}\n" for line in report(tallies, monotonic() - began)))
    sys.exit(any(tally.broken for tally in tallies.values()))


if __name__ == "__main__":
    main()
