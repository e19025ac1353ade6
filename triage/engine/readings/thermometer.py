"""The thermometer test: set point and readings over time, read through the glass.

Times are minutes after switching on, temperatures Celsius. Readings count from `SETTLING` on and in full from
`SETTLED`, because a thermometer lags the air. Mean and swing come from the extremes of the steady cycles, as EN
60350-1 clause 7.3 takes them (wording from memory): that is the mean over whole cycles, whether or not readings are
dense enough to show where one ends. Readings that fall anywhere in an even rise and fall are uniform between its
extremes, which gives what few readings miss of them, and how unsure that is (order statistics of the uniform).

Nothing here switches at a limit: a reading's weight, a fall, a climb all come on gradually.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import sqrt

from triage.engine.readings.encoding import Field, decode_fields, read_number, read_optional, read_pairs
from triage.engine.readings.measured import Measured, in_quadrature, uniform_uncertainty
from triage.engine.readings.normal import normal_cdf

SETTLING_MINUTES, SETTLED_MINUTES = 20.0, 30.0
DIAL_TOLERANCE_KELVIN = 10.0  # a cheap dial or probe (common practice, no source)
SCALE_STEP_KELVIN = 2.0  # how finely a dial is read; author's judgement
BOILING_CELSIUS = 100.0
TOLERANCE_AFTER_CHECK = 0.5  # what a check in boiling water leaves of the tolerance at baking heat; author's judgement
MIN_FALL_KELVIN = 3.0  # less than this may be a shaking needle
UNSETTLED_UNCERTAINTY_KELVIN = 100.0  # how little a reading taken while it warms up says of the mean, in kelvin
DEFAULT_SWING_KELVIN = 22.0  # 40 F between extremes: a sound domestic oven by design, published for a 350 F oven
TARGET_UNCERTAINTY_KELVIN = 2.5  # what the number of readings may leave open: well below what a cheap thermometer does
MAX_MORE_READINGS = 10

THERMOMETER_FIELDS: Mapping[str, Field] = {
    "set": Field("c", 50, 300),
    "readings": Field("r", 0, 600),
    "temperature": Field("t", 0, 500),
    "tolerance": Field("a", 0.1, 40),
    "boiling": Field("b", 70, 130),
}


@dataclass(frozen=True, slots=True)
class Temperatures:
    """`offset` of the mean from the set point, `swing` between the extremes, `climb` of a last reading that has not
    fallen since, `duty` the share of the steady time in which it did not fall; `more` readings are still wanted.

    `reached` is the minute it first was at the set point. Where it was heading is told by `warming.py`.
    """

    points: tuple[tuple[float, float], ...]
    set_point: float
    mean: Measured
    offset: Measured
    swing: Measured
    climb: Measured
    duty: Measured
    overshoot: float
    reached_minute: float | None
    readings_wanted: int

    @property
    def quantities(self) -> Mapping[str, Measured]:
        return {"offset": self.offset, "swing": self.swing, "climb": self.climb, "duty": self.duty}


def read_thermometer(text: str) -> Temperatures:
    """The temperatures a written reading stands for. Raises Unreadable."""
    raw = decode_fields(THERMOMETER_FIELDS, text)
    set_to = read_number(THERMOMETER_FIELDS, raw, "set")
    correction, unsure = _instrument(raw)
    points = tuple(
        (time, value + correction) for time, value in read_pairs(THERMOMETER_FIELDS, raw, "readings", "temperature")
    )
    weights = [_settled_share(time) for time, _ in points]
    mean, swing = _extremes(points, weights)
    unsure_mean = in_quadrature(mean.uncertainty, unsure)
    highest, last = max(value for _, value in points), points[-1][1]
    return Temperatures(
        points=points,
        set_point=set_to,
        mean=Measured(mean.value, unsure_mean),
        offset=Measured(mean.value - set_to, unsure_mean),
        swing=swing,
        climb=Measured(last - set_to - 2.0 * (highest - last), unsure),
        duty=_duty(points, weights),
        overshoot=max(highest - set_to, 0.0),
        reached_minute=_reached_minute(points, set_to),
        readings_wanted=_readings_wanted(sum(weights), swing.value),
    )


def turning_points(points: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    """The tops and bottoms between which the temperature moves by more than a shaking needle: for a picture."""
    found: list[tuple[float, float]] = []
    rising: bool | None = None
    extreme = points[0]
    for point in points[1:]:
        further = point[1] - extreme[1]
        if rising is None:
            if abs(further) > MIN_FALL_KELVIN:
                rising, extreme = further > 0.0, point
        elif (further > 0.0) is rising:
            extreme = point
        elif abs(further) > MIN_FALL_KELVIN:
            found.append(extreme)
            rising, extreme = not rising, point
    return tuple(found)


def whole_cycles(points: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    """Start and end of each whole cycle that the readings show, one after the other."""
    ends = [time for time, _ in turning_points(points)][::2]
    return tuple(pairwise(ends))


def _instrument(raw: Mapping[str, str]) -> tuple[float, float]:
    """What to add to each reading, and the standard uncertainty that is common to all of them."""
    tolerance = read_optional(THERMOMETER_FIELDS, raw, "tolerance") or DIAL_TOLERANCE_KELVIN
    boiling = read_optional(THERMOMETER_FIELDS, raw, "boiling")
    if boiling is None:
        return 0.0, uniform_uncertainty(tolerance)
    return BOILING_CELSIUS - boiling, in_quadrature(
        uniform_uncertainty(TOLERANCE_AFTER_CHECK * tolerance), uniform_uncertainty(SCALE_STEP_KELVIN)
    )


def _settled_share(time: float) -> float:
    """How far a reading counts: the oven and the thermometer need their time."""
    return min(max((time - SETTLING_MINUTES) / (SETTLED_MINUTES - SETTLING_MINUTES), 0.0), 1.0)


def _extremes(points: Sequence[tuple[float, float]], weights: Sequence[float]) -> tuple[Measured, Measured]:
    """The middle of the extremes and their distance, each with what the number of readings leaves open.

    n readings anywhere between two extremes span (n-1)/(n+1) of the distance on average, and the rest is taken as
    missed; the middle of their span has variance 1/(2(n+1)(n+2)), the span itself less than 2/((n+1)(n+2)), in
    squares of that distance. Below one settled reading nearly nothing is known.
    """
    count = sum(weights)
    last = points[-1][1]
    centre = sum(w * value for w, (_, value) in zip(weights, points, strict=True)) / count if count else last
    pulled = [centre + w * (value - centre) for w, (_, value) in zip(weights, points, strict=True)]
    span = max(pulled) - min(pulled)
    missed = 1.0 - max(count - 1.0, 0.0) / (count + 1.0)
    swing = span + missed * max(span, DEFAULT_SWING_KELVIN)
    known = (UNSETTLED_UNCERTAINTY_KELVIN * max(1.0 - count, 0.0), uniform_uncertainty(SCALE_STEP_KELVIN))
    unsure_swing = swing * sqrt(2.0 / ((count + 1.0) * (count + 2.0)))
    middle = (max(pulled) + min(pulled)) / 2.0
    return (
        Measured(middle, in_quadrature(_unsure_middle(swing, count), *known)),
        Measured(swing, in_quadrature(unsure_swing, *known)),
    )


def _unsure_middle(swing: float, count: float) -> float:
    return swing / sqrt(2.0 * (count + 1.0) * (count + 2.0))


def _duty(points: Sequence[tuple[float, float]], weights: Sequence[float]) -> Measured:
    """The share of the steady time without a fall; each step counts as a fall as far as it surely is one."""
    steady = falling = steps = 0.0
    for (before, one), (after, other), w in zip(points, points[1:], weights, strict=False):
        steady += w * (after - before)
        falling += (
            w
            * (after - before)
            * normal_cdf((one - other - MIN_FALL_KELVIN) / (sqrt(2.0) * uniform_uncertainty(SCALE_STEP_KELVIN)))
        )
        steps += w
    known = min(steady / SETTLED_MINUTES, 1.0)
    duty = 1.0 - falling / steady if steady else 0.5
    return Measured(duty, in_quadrature(0.3 / sqrt(steps + 1.0), 10.0 * (1.0 - known) ** 2))


def _reached_minute(points: Sequence[tuple[float, float]], set_to: float) -> float | None:
    """The minute the set point was first passed, between two readings in proportion."""
    for (before, one), (after, other) in pairwise(points):
        if one < set_to <= other:
            return before + (after - before) * (set_to - one) / (other - one)
    return None


def _readings_wanted(count: float, swing: float) -> int:
    """How many more readings bring the mean's uncertainty from their number below `GOOD_ENOUGH`."""
    return next(
        (
            n
            for n in range(MAX_MORE_READINGS)
            if _unsure_middle(max(swing, DEFAULT_SWING_KELVIN), count + n) <= TARGET_UNCERTAINTY_KELVIN
        ),
        MAX_MORE_READINGS,
    )
