"""The preheat test: minutes from cold to the set temperature, beside what the oven's power and size need.

An empty oven is taken as one heat capacity C that loses G watts per kelvin: C dT/dt = P - G (T - room), so that it
needs -C/G ln(1 - G rise/P). C and G grow with the walls, volume^(2/3). At 65 litres C = 5.0 kJ/K and G = 4.4 W/K:
with them 1.6 kW takes about 13 minutes to 200 C (12 were measured on one oven, published by an energy-saving site)
and the steady loss at 180 C is about 0.7 kW; give or take a fifth each. Author's judgement beyond that one oven.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import log

from triage.engine.readings.measured import Measured, propagated
from triage.engine.readings.rating import RATING_FIELDS, read_rating
from triage.engine.readings.written import Field, fields_of, number, optional

USUAL_LITRES = 65.0
LITRES_UNSURE = 12.0
CAPACITY, CAPACITY_UNSURE = 5000.0, 0.2
LOSS, LOSS_UNSURE = 4.4, 0.2
ROOM = 20.0
CLOCK_MINUTES = 1.0  # a light or a beep does not come at the same moment twice; author's judgement
NEARLY_NEVER = 0.97

FIELDS: Mapping[str, Field] = {
    "minutes": Field("m", 0.5, 240),
    "set": Field("c", 60, 300),
    "room": Field("o", 0, 45),
    "litres": Field("l", 15, 150),
    "waiting": Field("w", 0, 1, whole=True),
    **RATING_FIELDS,
}


@dataclass(frozen=True, slots=True)
class Preheat:
    """`ratio` of the minutes taken to the minutes a sound oven needs; `needed` those minutes."""

    minutes: float
    needed: Measured
    ratio: Measured

    @property
    def quantities(self) -> Mapping[str, Measured]:
        return {"ratio": self.ratio}


def read(text: str) -> Preheat:
    """The preheat a written reading stands for; `waiting` when it is not there yet. Raises Unreadable."""
    raw = fields_of(FIELDS, text)
    minutes, set_to = number(FIELDS, raw, "minutes"), number(FIELDS, raw, "set")
    room, litres = optional(FIELDS, raw, "room"), optional(FIELDS, raw, "litres")
    rise = set_to - (ROOM if room is None else room)
    power = read_rating(FIELDS, raw).expected
    size = Measured(USUAL_LITRES, LITRES_UNSURE) if litres is None else Measured(litres, 1.0)
    values = (power.value, size.value, CAPACITY, LOSS)
    unsure = (power.uncertainty, size.uncertainty, CAPACITY * CAPACITY_UNSURE, LOSS * LOSS_UNSURE)
    needed = Measured(*propagated(lambda *v: minutes_needed(rise, *v), values, unsure))
    ratio, u = propagated(
        lambda taken, *v: taken / minutes_needed(rise, *v), (minutes, *values), (CLOCK_MINUTES, *unsure)
    )
    waiting = 1.0 if optional(FIELDS, raw, "waiting") else 0.0
    return Preheat(minutes, needed, Measured(ratio, u, waiting))


def minutes_needed(rise: float, watts: float, litres: float, capacity: float = CAPACITY, loss: float = LOSS) -> float:
    """Minutes a sound oven of that power and size takes to warm by `rise`; very many where it nearly cannot."""
    walls = (litres / USUAL_LITRES) ** (2.0 / 3.0)
    reach = min(loss * walls * rise / watts, NEARLY_NEVER)
    return -capacity / loss * log(1.0 - reach) / 60.0
