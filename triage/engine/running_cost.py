"""What a fault wastes in electricity over a year, at a person's own use: ranges, from a model of one oven.

The oven is a body that warms with its heaters' power and loses heat in proportion to how much hotter it is than the
room. The figures of a usual oven below are what the few published measurements agree with; they are as rough as the
ranges are wide.
"""

from dataclasses import dataclass
from math import log, sqrt

from triage.engine.repairs import Span, Waste

# A usual oven at 180 degrees in a kitchen of 20 (IEC 60350-1 tests at about these; from memory, not seen).
ROOM_KELVIN = 293.15
HOT_KELVIN = 453.15
RISE = HOT_KELVIN - ROOM_KELVIN
CAVITY_HEIGHT = 0.35  # metres
# Watts lost per kelvin and watt-hours per kelvin to warm it: from memory, and such that an oven of 1.6 kW needs
# about 12 minutes and 0.32 kWh to 200 degrees, which was measured on one.
LOSS = Span(2.0, 4.0)
HEAT = 1.35
FULL_WATTS = 2000.0
# Food that browns late stays in longer: up to this share of the usual time (author's judgement).
LONGER_IN = 0.25
# Air of the room: pressure over (gas constant times temperature); heat capacity of air; outflow through a hole.
PASCAL = 101_325.0
STACK = 0.0342  # kelvin per metre: gravity over the gas constant of air
GAS_CONSTANT = 287.05
AIR_HEAT = 1007.0
OUTFLOW = 0.65
HALF_WAY_UP = 1 / sqrt(2)  # a gap that draws in below what it lets out above sees half the pressure
WEEKS = 52.0
HOURS_A_YEAR = 8760.0


@dataclass(frozen=True, slots=True)
class Use:
    """How often a week the oven is used, and for how many hours each time."""

    times: float
    hours: float

    @property
    def hours_a_year(self) -> float:
        return self.times * self.hours * WEEKS


def wasted_kwh(waste: Waste, use: Use) -> Span:
    """Kilowatt-hours a year that would not be used without the fault."""
    low = high = 0.0
    if waste.gap_cm2:
        low += HALF_WAY_UP * leak_watts(waste.gap_cm2.low) * use.hours_a_year
        high += leak_watts(waste.gap_cm2.high) * use.hours_a_year
    if waste.power_share:
        extra = weak_watt_hours(waste.power_share, use.hours)
        low += extra.low * use.times * WEEKS
        high += extra.high * use.times * WEEKS
    if waste.too_hot_kelvin:
        low += LOSS.low * waste.too_hot_kelvin.low * use.hours_a_year
        high += LOSS.high * waste.too_hot_kelvin.high * use.hours_a_year
    if waste.always_watts:
        beside = HOURS_A_YEAR - use.hours_a_year
        low += waste.always_watts.low * beside
        high += waste.always_watts.high * beside
    return Span(low, high).times(1 / 1000)


def leak_watts(gap_cm2: float) -> float:
    """Heat carried off by air through a gap when the whole height of the cavity drives it: the most it can be."""
    driving = STACK * PASCAL * CAVITY_HEIGHT * (1 / ROOM_KELVIN - 1 / HOT_KELVIN)
    density = PASCAL / (GAS_CONSTANT * HOT_KELVIN)
    cubic_metres = OUTFLOW * gap_cm2 / 10_000 * sqrt(2 * driving / density)
    return density * cubic_metres * AIR_HEAT * RISE


def weak_watt_hours(power_share: Span, hours: float) -> Span:
    """What one use takes more when only part of the power is left: a longer way up, and food that stays in longer."""
    low = preheat_watt_hours(FULL_WATTS * power_share.high, LOSS.low) - preheat_watt_hours(FULL_WATTS, LOSS.low)
    high = preheat_watt_hours(FULL_WATTS * power_share.low, LOSS.high) - preheat_watt_hours(FULL_WATTS, LOSS.high)
    return Span(low, high + LONGER_IN * hours * LOSS.high * RISE)


def preheat_watt_hours(watts: float, loss: float) -> float:
    return watts * preheat_hours(watts, loss, RISE)


def preheat_hours(watts: float, loss: float, rise: float) -> float:
    """Time to warm by `rise` kelvin with `watts`, which must be more than the oven loses up there."""
    return HEAT / loss * log(watts / (watts - loss * rise))
