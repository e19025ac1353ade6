"""Temperatures in the unit people use where the oven stands; a reading keeps Celsius and kelvin."""

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal

from triage.check_pages.form_fields import Conversion
from triage.check_pages.region import HasRegion

A_TENTH = Decimal("0.1")
FREEZING = Decimal(32)
PER_KELVIN = Decimal("1.8")


@dataclass(frozen=True)
class Degrees:
    """`unit` is °C or °F; a temperature turned into Celsius and from it, a difference into kelvin and from it."""

    unit: str
    to_celsius: Callable[[Decimal], Decimal]
    from_celsius: Callable[[float], float]
    to_kelvin: Callable[[Decimal], Decimal]
    from_kelvin: Callable[[float], float]

    def to_stored(self, conversion: Conversion, typed: Decimal) -> Decimal:
        """A figure as a reading holds it; one without a conversion as it was typed."""
        if conversion == "temperature":
            return self.to_celsius(typed)
        return self.to_kelvin(typed) if conversion == "difference" else typed

    def to_typed(self, conversion: Conversion, stored: float) -> float:
        """A figure of a reading as people type it there."""
        if conversion == "temperature":
            return self.from_celsius(stored)
        return self.from_kelvin(stored) if conversion == "difference" else stored

    def temperature_text(self, celsius: float) -> str:
        return f"{self.from_celsius(celsius):.0f} {self.unit}"

    def difference_text(self, kelvin: float) -> str:
        return f"{self.from_kelvin(kelvin):.0f} {self.unit}"


CELSIUS = Degrees("°C", lambda c: c, lambda c: c, lambda k: k, lambda k: k)
FAHRENHEIT = Degrees(
    "°F",
    lambda f: ((f - FREEZING) / PER_KELVIN).quantize(A_TENTH),
    lambda c: 32.0 + 1.8 * c,
    lambda f: (f / PER_KELVIN).quantize(A_TENTH),
    lambda k: 1.8 * k,
)


def degrees_of(where: HasRegion) -> Degrees:
    return FAHRENHEIT if where.region.temperature == "F" else CELSIUS
