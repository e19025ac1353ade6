"""Where a warming oven was heading, and how fast it loses heat: one first-order curve through the readings before it
first turned or came to the set heat.

An oven that would never get there on its own gets too little heat or loses too much; a thermostat that is off cuts
out instead, and the curve then heads past the set heat. Told, and not used as evidence: a seal's leak of a few square
centimetres loses some tens of watts of the 700 or so that walls lose. Nothing is told where the curve does not fit,
where its end may as well lie on the other side of the set heat, where it was watched too short to call it slow, or
where it would lose heat faster than any shut door lets out: a control that holds a heat without resting looks so.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import takewhile
from math import log

from triage.engine.readings.fitting import fit
from triage.engine.readings.measured import Measured, in_quadrature, uniform_uncertainty
from triage.engine.readings.thermometer import (
    MIN_FALL_KELVIN,
    SCALE_STEP_KELVIN,
    SETTLED_MINUTES,
    Temperatures,
    turning_points,
)

MAX_END_UNCERTAINTY_KELVIN = 20.0  # kelvin of standard uncertainty; like the next, author's judgement
MIN_RISE_KELVIN = 40.0  # with less of a rise nobody saw it warm up
MIN_HALF_TIME_MINUTES = 6.0  # minutes to lose half the warmth, where `preheat.py` puts a sound oven at 13


@dataclass(frozen=True, slots=True)
class WarmingTrend:
    """The heat the oven was heading for, whether that is `short` of the set heat, and the minutes in which it would
    lose half its warmth."""

    end_temperature: Measured
    falls_short: bool
    half_time_minutes: float


def warming_trend(found: Temperatures) -> WarmingTrend | None:
    """Where it was heading; None where the readings do not show it."""
    turns = turning_points(found.points)
    points = _before(found, turns[0][0] if turns else found.points[-1][0])
    curve = fit(points, uniform_uncertainty(SCALE_STEP_KELVIN))
    if curve is None or curve.rms_residual > MIN_FALL_KELVIN or points[-1][1] - points[0][1] < MIN_RISE_KELVIN:
        return None
    end = Measured(curve.end, in_quadrature(curve.end_uncertainty, found.climb.uncertainty))
    short = end.value < found.set_point
    half = curve.tau * log(2.0)
    watched = not turns and found.points[-1][0] >= SETTLED_MINUTES and half >= MIN_HALF_TIME_MINUTES
    apart = abs(end.value - found.set_point) > 2.0 * end.uncertainty
    sure = end.uncertainty <= MAX_END_UNCERTAINTY_KELVIN and apart and (watched or not short)
    return WarmingTrend(end, short, half) if sure else None


def _before(found: Temperatures, turn: float) -> Sequence[tuple[float, float]]:
    """The readings up to its first turn, of those before the set heat."""
    return list(takewhile(lambda point: point[0] <= turn and point[1] < found.set_point, found.points))
