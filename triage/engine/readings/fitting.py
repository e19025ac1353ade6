"""First-order warming and cooling: T(t) = end + (start - end) exp(-t/tau), fitted by least squares.

For a given tau the best end and start are a straight-line fit, so only tau has to be searched: a coarse walk over its
logarithm and a golden section about the best. Deterministic, and short enough to be the same in every port.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, log, sqrt

SHORTEST, LONGEST = 0.05, 50.0  # tau, in lengths of the record
STEPS = 60
REFINEMENTS = 60
GOLDEN = (sqrt(5.0) - 1.0) / 2.0
FEWEST = 4


@dataclass(frozen=True, slots=True)
class FirstOrder:
    """Where it starts, where it would end, and the time constant; `left` is the root mean square of what is left."""

    start: float
    end: float
    tau: float
    left: float

    def at(self, time: float) -> float:
        return self.end + (self.start - self.end) * exp(-time / self.tau)


def fit(points: Sequence[tuple[float, float]]) -> FirstOrder | None:
    """The curve through (time, temperature) with the least squares left; None from fewer than four points."""
    if len(points) < FEWEST:
        return None
    length = points[-1][0] - points[0][0]
    low, high = log(SHORTEST * length), log(LONGEST * length)
    step = (high - low) / STEPS
    grid = [low + step * i for i in range(STEPS + 1)]
    best = min(grid, key=lambda place: _line(points, exp(place))[2])
    low, high = best - step, best + step
    for _ in range(REFINEMENTS):
        one, other = high - GOLDEN * (high - low), low + GOLDEN * (high - low)
        if _line(points, exp(one))[2] <= _line(points, exp(other))[2]:
            high = other
        else:
            low = one
    tau = exp((low + high) / 2.0)
    end, drop, squares = _line(points, tau)
    return FirstOrder(end + drop, end, tau, sqrt(squares / len(points)))


def _line(points: Sequence[tuple[float, float]], tau: float) -> tuple[float, float, float]:
    """The straight line of temperature over exp(-t/tau): its end (at zero), its slope, and the squares left."""
    xs = [exp(-time / tau) for time, _ in points]
    mean_x = sum(xs) / len(xs)
    mean_y = sum(value for _, value in points) / len(points)
    across = sum((x - mean_x) ** 2 for x in xs)
    slope = sum((x - mean_x) * (value - mean_y) for x, (_, value) in zip(xs, points, strict=True)) / (across or 1.0)
    end = mean_y - slope * mean_x
    return end, slope, sum((end + slope * x - value) ** 2 for x, (_, value) in zip(xs, points, strict=True))
