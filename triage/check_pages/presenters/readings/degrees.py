"""Temperatures in the unit people use where the oven stands; a reading keeps Celsius."""

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal

from triage.check_pages.region import HasRegion

A_TENTH = Decimal("0.1")
FREEZING = Decimal(32)
PER_KELVIN = Decimal("1.8")


@dataclass(frozen=True)
class Degrees:
    """`unit` is °C or °F; `kept` and `shown` turn a temperature from it and into it, the others a difference."""

    unit: str
    kept: Callable[[Decimal], Decimal]
    shown: Callable[[float], float]
    kept_apart: Callable[[Decimal], Decimal]
    shown_apart: Callable[[float], float]

    def words(self, celsius: float) -> str:
        return f"{self.shown(celsius):.0f} {self.unit}"

    def apart(self, kelvin: float) -> str:
        return f"{self.shown_apart(kelvin):.0f} {self.unit}"


CELSIUS = Degrees("°C", lambda c: c, lambda c: c, lambda k: k, lambda k: k)
FAHRENHEIT = Degrees(
    "°F",
    lambda f: ((f - FREEZING) / PER_KELVIN).quantize(A_TENTH),
    lambda c: 32.0 + 1.8 * c,
    lambda f: (f / PER_KELVIN).quantize(A_TENTH),
    lambda k: 1.8 * k,
)


def degrees_of(placed: HasRegion) -> Degrees:
    return FAHRENHEIT if placed.region.temperature == "F" else CELSIUS
