"""First-order warming and cooling: T(t) = end + (start - end) exp(-t/tau), fitted by least squares.

For a given tau the best end and start are a straight-line fit, so only tau has to be searched: a walk over its
logarithm, again and again between the neighbours of the best place. How far off the end may be comes of how the misfit
bends when tau is a little shorter or longer, and how the end moves with it; the share it would have were tau known
is left out, being small beside. Deterministic, and short enough to be the same in every port.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, log, sqrt

MIN_TAU, MAX_TAU = 0.05, 50.0  # tau, in lengths of the record
GRID_STEPS = 60
ROUNDS = 6
MIN_POINTS = 4
PARAMETERS = 3  # start, end and tau
LOG_TAU_STEP = 0.1  # how much shorter or longer, in the logarithm of tau
MIN_CURVATURE = 1e-9


@dataclass(frozen=True, slots=True)
class FirstOrder:
    """Where it starts, where it would end, and the time constant; `left` is the root mean square of what is left,
    `unsure` the standard uncertainty of the end."""

    start: float
    end: float
    tau: float
    rms_residual: float
    end_uncertainty: float

    def at(self, time: float) -> float:
        return self.end + (self.start - self.end) * exp(-time / self.tau)


def fit(points: Sequence[tuple[float, float]], noise: float) -> FirstOrder | None:
    """The curve through (time, temperature) with the least squares left; None from fewer than four points. One
    temperature is unsure by `noise`, or by more where the curve leaves more."""
    if len(points) < MIN_POINTS:
        return None
    length = points[-1][0] - points[0][0]
    low, high = log(MIN_TAU * length), log(MAX_TAU * length)
    for _ in range(ROUNDS):
        step = (high - low) / GRID_STEPS
        best = min((_line_through(points, low + step * at) for at in range(GRID_STEPS + 1)), key=lambda line: line[3])
        low, high = best[0] - step, best[0] + step
    place, end, drop, squares = best
    variance = max(noise**2, squares / (len(points) - PARAMETERS))
    return FirstOrder(end + drop, end, exp(place), sqrt(squares / len(points)), _unsure(points, best, variance))


def _unsure(points: Sequence[tuple[float, float]], best: tuple[float, float, float, float], variance: float) -> float:
    _, shorter, _, less = _line_through(points, best[0] - LOG_TAU_STEP)
    _, longer, _, more = _line_through(points, best[0] + LOG_TAU_STEP)
    bend = max(less + more - 2.0 * best[3], MIN_CURVATURE)
    return abs(longer - shorter) * sqrt(variance / (2.0 * bend))


def _line_through(points: Sequence[tuple[float, float]], place: float) -> tuple[float, float, float, float]:
    """The straight line of temperature over exp(-t/tau), tau given by its logarithm: that `place`, the line's end (at
    zero), its slope, and the squares left."""
    tau = exp(place)
    xs = [exp(-time / tau) for time, _ in points]
    mean_x = sum(xs) / len(xs)
    mean_y = sum(value for _, value in points) / len(points)
    across = sum((x - mean_x) ** 2 for x in xs)
    slope = sum((x - mean_x) * (value - mean_y) for x, (_, value) in zip(xs, points, strict=True)) / (across or 1.0)
    end = mean_y - slope * mean_x
    return place, end, slope, sum((end + slope * x - value) ** 2 for x, (_, value) in zip(xs, points, strict=True))
