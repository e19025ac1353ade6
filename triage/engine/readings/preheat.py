"""The preheat test: minutes from cold to the set temperature, beside what the oven's power and size need.

An empty oven is taken as one heat capacity C that loses G watts per kelvin: C dT/dt = P - G (T - room), so that it
needs -C/G ln(1 - G rise/P). C and G grow with the walls, volume^(2/3). At 65 litres C = 5.0 kJ/K and G = 4.4 W/K:
with them 1.6 kW takes about 13 minutes to 200 C (12 were measured on one oven, published by an energy-saving site)
and the steady loss at 180 C is about 0.7 kW; give or take a fifth each. Author's judgement beyond that one oven.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import log

from triage.engine.readings.encoding import Field, decode_fields, read_number, read_optional
from triage.engine.readings.measured import Measured, propagated
from triage.engine.readings.rating import RATING_FIELDS, read_rating

DEFAULT_LITRES = 65.0
LITRES_UNCERTAINTY = 12.0
CAPACITY_JOULES_PER_KELVIN, CAPACITY_RELATIVE_UNCERTAINTY = 5000.0, 0.2
LOSS_WATTS_PER_KELVIN, LOSS_RELATIVE_UNCERTAINTY = 4.4, 0.2
ROOM_CELSIUS = 20.0
CLOCK_UNCERTAINTY_MINUTES = 1.0  # a light or a beep does not come at the same moment twice; author's judgement
MAX_LOSS_SHARE = 0.97

PREHEAT_FIELDS: Mapping[str, Field] = {
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


def read_preheat(text: str) -> Preheat:
    """The preheat a written reading stands for; `waiting` when it is not there yet. Raises Unreadable."""
    raw = decode_fields(PREHEAT_FIELDS, text)
    minutes, set_to = read_number(PREHEAT_FIELDS, raw, "minutes"), read_number(PREHEAT_FIELDS, raw, "set")
    room, litres = read_optional(PREHEAT_FIELDS, raw, "room"), read_optional(PREHEAT_FIELDS, raw, "litres")
    rise = set_to - (ROOM_CELSIUS if room is None else room)
    power = read_rating(PREHEAT_FIELDS, raw).expected
    size = Measured(DEFAULT_LITRES, LITRES_UNCERTAINTY) if litres is None else Measured(litres, 1.0)
    values = (power.value, size.value, CAPACITY_JOULES_PER_KELVIN, LOSS_WATTS_PER_KELVIN)
    unsure = (
        power.uncertainty,
        size.uncertainty,
        CAPACITY_JOULES_PER_KELVIN * CAPACITY_RELATIVE_UNCERTAINTY,
        LOSS_WATTS_PER_KELVIN * LOSS_RELATIVE_UNCERTAINTY,
    )
    needed = Measured(*propagated(lambda *v: minutes_needed(rise, *v), values, unsure))
    ratio, u = propagated(
        lambda taken, *v: taken / minutes_needed(rise, *v), (minutes, *values), (CLOCK_UNCERTAINTY_MINUTES, *unsure)
    )
    waiting = 1.0 if read_optional(PREHEAT_FIELDS, raw, "waiting") else 0.0
    return Preheat(minutes, needed, Measured(ratio, u, waiting))


def minutes_needed(
    rise: float,
    watts: float,
    litres: float,
    capacity: float = CAPACITY_JOULES_PER_KELVIN,
    loss: float = LOSS_WATTS_PER_KELVIN,
) -> float:
    """Minutes a sound oven of that power and size takes to warm by `rise`; very many where it nearly cannot."""
    walls = (litres / DEFAULT_LITRES) ** (2.0 / 3.0)
    reach = min(loss * walls * rise / watts, MAX_LOSS_SHARE)
    return -capacity / loss * log(1.0 - reach) / 60.0
