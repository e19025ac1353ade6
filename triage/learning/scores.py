"""How good stated chances were, once it is known what was found.

A forecast gives a chance to every fault a job may be named after; exactly one was found.

- Brier score over all faults, not halved: 0 is perfect, 2 the worst (Brier, "Verification of forecasts expressed in
  terms of probability", Monthly Weather Review 1950).
- Log score: minus the mean natural logarithm of the chance of what was found (`triage.authoring.figures.log_score`).
- Reliability: the chance of the leading fault, in equal bins, against how often it was the one; each bin with its
  Wilson interval.
- Decomposition of the Brier score of those leading chances into five terms, which binned forecasts need: reliability
  - resolution + uncertainty + variance within bins - covariance within bins (Stephenson, Coelho and Jolliffe, "Two
  extra components in the Brier score decomposition", Weather and Forecasting 2008).
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import sqrt
from statistics import fmean, stdev

from triage.authoring.figures import Z_95, log_score, wilson

BINS = 10


@dataclass(frozen=True, slots=True, eq=False)
class Forecast:
    """The chances stated for one outcome, and what was found."""

    probabilities: Mapping[str, float]
    found: str

    @property
    def found_probability(self) -> float:
        return self.probabilities.get(self.found, 0.0)

    @property
    def leading(self) -> tuple[float, bool]:
        """The chance of the likeliest fault and whether it was the one."""
        first = max(self.probabilities, key=lambda fault: self.probabilities[fault])
        return self.probabilities[first], first == self.found


@dataclass(frozen=True, slots=True)
class Bin:
    """The leading chances between `low` and `high`: their mean, and how many were right with the 95 % interval."""

    low: float
    high: float
    stated: float
    right: int
    of: int
    interval: tuple[float, float]


@dataclass(frozen=True, slots=True)
class BrierTerms:
    """The parts of a binary Brier score of binned forecasts; `total` is the score itself."""

    reliability: float
    resolution: float
    uncertainty: float
    variance_within: float
    covariance_within: float

    @property
    def total(self) -> float:
        return self.reliability - self.resolution + self.uncertainty + self.variance_within - self.covariance_within


@dataclass(frozen=True, slots=True)
class Scores:
    """Everything said about one set of forecasts."""

    brier: float
    log_score: float
    bins: tuple[Bin, ...]
    terms: BrierTerms


def scores(forecasts: Sequence[Forecast]) -> Scores:
    """The scores of these forecasts, of which there must be one at least."""
    leading = [forecast.leading for forecast in forecasts]
    return Scores(
        brier=fmean(brier(forecast) for forecast in forecasts),
        log_score=log_score(forecast.found_probability for forecast in forecasts) or 0.0,
        bins=reliability(leading),
        terms=brier_terms(leading),
    )


def brier(forecast: Forecast) -> float:
    others = sum(chance * chance for fault, chance in forecast.probabilities.items() if fault != forecast.found)
    return others + (1.0 - forecast.found_probability) ** 2


def reliability(stated: Sequence[tuple[float, bool]], bins: int = BINS) -> tuple[Bin, ...]:
    """The bins that hold anything, lowest first."""
    return tuple(
        Bin(
            low=number / bins,
            high=(number + 1) / bins,
            stated=fmean(chance for chance, _ in held),
            right=sum(was for _, was in held),
            of=len(held),
            interval=wilson(sum(was for _, was in held), len(held)),
        )
        for number, held in _binned(stated, bins)
    )


def brier_terms(stated: Sequence[tuple[float, bool]], bins: int = BINS) -> BrierTerms:
    """The decomposition over equal bins."""
    rate = fmean(was for _, was in stated)
    held_in = [held for _, held in _binned(stated, bins)]
    terms = [_terms(held, rate) for held in held_in]
    shares = [len(held) / len(stated) for held in held_in]
    weighed = (sum(s * term for s, term in zip(shares, column, strict=True)) for column in zip(*terms, strict=True))
    rel, res, within, together = weighed
    return BrierTerms(rel, res, rate * (1.0 - rate), within, together)


def _terms(held: Sequence[tuple[float, bool]], rate: float) -> tuple[float, float, float, float]:
    chance, came = fmean(c for c, _ in held), fmean(was for _, was in held)
    within = fmean((c - chance) ** 2 for c, _ in held)
    together = 2.0 * fmean((c - chance) * (was - came) for c, was in held)
    return (chance - came) ** 2, (came - rate) ** 2, within, together


def _binned(stated: Sequence[tuple[float, bool]], bins: int) -> list[tuple[int, list[tuple[float, bool]]]]:
    """Each bin holds its lower edge; the last holds both."""
    held: dict[int, list[tuple[float, bool]]] = {}
    for chance, was in stated:
        held.setdefault(min(int(chance * bins), bins - 1), []).append((chance, was))
    return sorted(held.items())


def mean_difference(before: Sequence[float], after: Sequence[float]) -> tuple[float, float, float]:
    """The mean of before minus after, pair by pair, with its 95 % interval by the normal approximation."""
    differences = [a - b for a, b in zip(before, after, strict=True)]
    half = Z_95 * stdev(differences) / sqrt(len(differences)) if len(differences) > 1 else float("inf")
    middle = fmean(differences)
    return middle, middle - half, middle + half
