"""What a fault wastes in electricity over a year, at a person's own use: ranges, from a model of one oven.

The oven is a body that warms with its heaters' power and loses heat in proportion to how much hotter it is than the
room. The figures of a usual oven below are what the few published measurements agree with; they are as rough as the
ranges are wide.
"""

from dataclasses import dataclass
from math import log, sqrt

from triage.engine.repairs import Range, Waste

# A usual oven at 180 degrees in a kitchen of 20 (IEC 60350-1 tests at about these; from memory, not seen).
ROOM_KELVIN = 293.15
HOT_KELVIN = 453.15
RISE_KELVIN = HOT_KELVIN - ROOM_KELVIN
CAVITY_METRES = 0.35  # metres
# Watts lost per kelvin and watt-hours per kelvin to warm it: from memory, and such that an oven of 1.6 kW needs
# about 12 minutes and 0.32 kWh to 200 degrees, which was measured on one.
LOSS_WATTS_PER_KELVIN = Range(2.0, 4.0)
HEAT_WH_PER_KELVIN = 1.35
FULL_WATTS = 2000.0
# Food that browns late stays in longer: up to this share of the usual time (author's judgement).
MAX_EXTRA_TIME_SHARE = 0.25
# Air of the room: pressure over (gas constant times temperature); heat capacity of air; outflow through a hole.
PASCAL = 101_325.0
STACK_KELVIN_PER_METRE = 0.0342  # kelvin per metre: gravity over the gas constant of air
GAS_CONSTANT = 287.05
AIR_HEAT = 1007.0
DISCHARGE_COEFFICIENT = 0.65
NEUTRAL_PLANE_FACTOR = 1 / sqrt(2)  # a gap that draws in below what it lets out above sees half the pressure
WEEKS_PER_YEAR = 52.0
HOURS_PER_YEAR = 8760.0


@dataclass(frozen=True, slots=True)
class OvenUse:
    """How often a week the oven is used, and for how many hours each time."""

    times_per_week: float
    hours_each: float

    @property
    def hours_per_year(self) -> float:
        return self.times_per_week * self.hours_each * WEEKS_PER_YEAR


def wasted_kwh(waste: Waste, use: OvenUse) -> Range:
    """Kilowatt-hours a year that would not be used without the fault."""
    low = high = 0.0
    if waste.gap_cm2:
        low += NEUTRAL_PLANE_FACTOR * leak_watts(waste.gap_cm2.low) * use.hours_per_year
        high += leak_watts(waste.gap_cm2.high) * use.hours_per_year
    if waste.power_share:
        extra = low_power_watt_hours(waste.power_share, use.hours_each)
        low += extra.low * use.times_per_week * WEEKS_PER_YEAR
        high += extra.high * use.times_per_week * WEEKS_PER_YEAR
    if waste.too_hot_kelvin:
        low += LOSS_WATTS_PER_KELVIN.low * waste.too_hot_kelvin.low * use.hours_per_year
        high += LOSS_WATTS_PER_KELVIN.high * waste.too_hot_kelvin.high * use.hours_per_year
    if waste.always_watts:
        beside = HOURS_PER_YEAR - use.hours_per_year
        low += waste.always_watts.low * beside
        high += waste.always_watts.high * beside
    return Range(low, high).scaled(1 / 1000)


def leak_watts(gap_cm2: float) -> float:
    """Heat carried off by air through a gap when the whole height of the cavity drives it: the most it can be."""
    driving = STACK_KELVIN_PER_METRE * PASCAL * CAVITY_METRES * (1 / ROOM_KELVIN - 1 / HOT_KELVIN)
    density = PASCAL / (GAS_CONSTANT * HOT_KELVIN)
    cubic_metres = DISCHARGE_COEFFICIENT * gap_cm2 / 10_000 * sqrt(2 * driving / density)
    return density * cubic_metres * AIR_HEAT * RISE_KELVIN


def low_power_watt_hours(power_share: Range, hours: float) -> Range:
    """What one use takes more when only part of the power is left: a longer way up, and food that stays in longer."""
    low = preheat_watt_hours(FULL_WATTS * power_share.high, LOSS_WATTS_PER_KELVIN.low) - preheat_watt_hours(
        FULL_WATTS, LOSS_WATTS_PER_KELVIN.low
    )
    high = preheat_watt_hours(FULL_WATTS * power_share.low, LOSS_WATTS_PER_KELVIN.high) - preheat_watt_hours(
        FULL_WATTS, LOSS_WATTS_PER_KELVIN.high
    )
    return Range(low, high + MAX_EXTRA_TIME_SHARE * hours * LOSS_WATTS_PER_KELVIN.high * RISE_KELVIN)


def preheat_watt_hours(watts: float, loss: float) -> float:
    return watts * preheat_hours(watts, loss, RISE_KELVIN)


def preheat_hours(watts: float, loss: float, rise: float) -> float:
    """Time to warm by `rise` kelvin with `watts`, which must be more than the oven loses up there."""
    return HEAT_WH_PER_KELVIN / loss * log(watts / (watts - loss * rise))
