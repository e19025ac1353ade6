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
from triage.engine.readings.measured import Measured, rectangle, together
from triage.engine.readings.thermometer import FALL, SCALE_STEP, SETTLED, Temperatures, turning_points

SURE = 20.0  # kelvin of standard uncertainty; like the next, author's judgement
WARMED = 40.0  # with less of a rise nobody saw it warm up
FASTEST = 6.0  # minutes to lose half the warmth, where `preheat.py` puts a sound oven at 13


@dataclass(frozen=True, slots=True)
class Heading:
    """The heat the oven was heading for, whether that is `short` of the set heat, and the minutes in which it would
    lose half its warmth."""

    end: Measured
    short: bool
    half: float


def heading(found: Temperatures) -> Heading | None:
    """Where it was heading; None where the readings do not show it."""
    turns = turning_points(found.points)
    points = _before(found, turns[0][0] if turns else found.points[-1][0])
    curve = fit(points, rectangle(SCALE_STEP))
    if curve is None or curve.left > FALL or points[-1][1] - points[0][1] < WARMED:
        return None
    end = Measured(curve.end, together(curve.unsure, found.climb.uncertainty))
    short = end.value < found.set_to
    half = curve.tau * log(2.0)
    watched = not turns and found.points[-1][0] >= SETTLED and half >= FASTEST
    apart = abs(end.value - found.set_to) > 2.0 * end.uncertainty
    sure = end.uncertainty <= SURE and apart and (watched or not short)
    return Heading(end, short, half) if sure else None


def _before(found: Temperatures, turn: float) -> Sequence[tuple[float, float]]:
    """The readings up to its first turn, of those before the set heat."""
    return list(takewhile(lambda point: point[0] <= turn and point[1] < found.set_to, found.points))
