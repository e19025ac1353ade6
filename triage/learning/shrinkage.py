"""How much outcomes may move a number: Dirichlet counts whose mean before any outcome is the pack's own number.

A pack's number is worth a stated count of outcomes, and outcomes are added to it:

    new share = (worth * old share + count) / (worth + all counts)

`WORTH` is 250: a call rate is worth 250 calls, a row of frequency words 250 answers. For a fault of ordinary rate (one
call in 64) that is a standard deviation of half the rate, about what an estimate of the trade can be good for; the word
"often" (0.45) is held to within 0.03. Twenty unlucky outcomes in a row move at most 20 in 270 of any of them. It is a
judgement, not a measurement: a larger number learns more slowly and is harder to mislead.
"""

from collections.abc import Sequence

from triage.engine.frequency import Row

PRIOR_WEIGHT = 250.0


def dirichlet_mean(shares: Sequence[float], worth: float, counts: Sequence[float]) -> Row:
    """The shares after these counts, when before them they were worth `worth` counts."""
    total = worth + sum(counts)
    return tuple((worth * share + count) / total for share, count in zip(shares, counts, strict=True))


def rate_factor(share: float, worth: float, found: float, expected: float) -> float:
    """By how much a rate changes that was worth `worth * share` finds, when `found` came where `expected` were due.

    A Dirichlet is a set of independent gammas divided by their sum; this is the mean of one of those gammas. Where
    every oven can have every fault it is `dirichlet_mean` divided by the old share. Where some ovens cannot,
    `expected` counts only those that can, so that a firm that never sees a fan oven learns nothing about fans.
    """
    known = worth * share
    return (known + found) / (known + expected)
