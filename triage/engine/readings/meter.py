"""The meter test: what the oven draws, seen at the home's meter, with nothing opened.

One of four ways: flashes counted from first to last (n flashes are n-1 intervals) with the seconds and the meter's
impulses per kWh; the moment of each flash, tapped along; two register readings and the minutes between; or a
display's watts before and with the oven. From it: watts above the rest of the house, and their share of what the
rating plate lets one expect (`rating.py`).

Tapped flashes give the median interval: a thermostat that rests stretches few of them, however long, so a sound
element that cycles does not look weak. A count or a register averages over any rest, so the longer it took, the
likelier its value is only a floor (`CYCLING_SECONDS`, author's judgement, no source).
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from triage.engine.readings.encoding import (
    Field,
    InvalidReading,
    decode_fields,
    read_number,
    read_numbers,
    read_optional,
)
from triage.engine.readings.measured import Measured, in_quadrature, triangular_uncertainty, uniform_uncertainty
from triage.engine.readings.rating import RATING_FIELDS, Rating, read_rating, share_of

JOULES_PER_KWH = 3.6e6
DEFAULT_BACKGROUND = Measured(
    150.0, 100.0
)  # what a house draws with the big loads off, when not noted; author's judgement
BACKGROUND_DRIFT_SHARE, BACKGROUND_DRIFT_WATTS = 0.15, 20.0  # how far a noted background may wander; author's judgement
TAP_SECONDS = 0.15  # how well a thumb follows a flash; author's judgement
DISPLAY_SHARE, DISPLAY_WATTS = 0.03, 10.0  # a display's class and its last digit; author's judgement
CYCLING_SECONDS = 900.0
MIN_TAPS = 5

METER_FIELDS: Mapping[str, Field] = {
    "flashes": Field("f", 0, 100_000, whole=True),
    "seconds": Field("s", 1, 14_400),
    "impulses": Field("k", 10, 20_000),
    "taps": Field("x", 0, 14_400),
    "before": Field("a", 0, 9_999_999),
    "after": Field("z", 0, 9_999_999),
    "minutes": Field("m", 1, 240),
    "idle": Field("i", 0, 30_000),
    "drawing": Field("j", 0, 30_000),
    "background": Field("b", 0, 10_000),
    **RATING_FIELDS,
}
METHODS = (
    ("flashes", "seconds", "impulses"),
    ("taps", "impulses"),
    ("before", "after", "minutes"),
    ("idle", "drawing"),
)


@dataclass(frozen=True, slots=True)
class Power:
    """`watts` the oven alone; `share` of what its plate lets one expect; `rested` the share of the time in which
    the thermostat seems to have rested (tapped flashes only)."""

    watts: Measured
    share: Measured
    rating: Rating
    resting_share: float = 0.0

    @property
    def quantities(self) -> Mapping[str, Measured]:
        return {"watts": self.watts, "share": self.share}


def read_meter(text: str) -> Power:
    """The power a written reading stands for. Raises Unreadable."""
    raw = decode_fields(METER_FIELDS, text)
    way = next((way for way in METHODS if way[0] in raw), None)
    if way is None:
        raise InvalidReading("missing", METHODS[0][0])
    if any(other[0] in raw for other in METHODS if other is not way):
        raise InvalidReading("one-way", way[0])
    rested = 0.0
    if way[0] == "taps":
        total, rested = _from_taps(raw)
    else:
        total = {"flashes": _from_count, "before": _from_register, "idle": _from_display}[way[0]](raw)
    resting = _background(raw, way[0])
    watts = Measured(
        total.value - resting.value, in_quadrature(total.uncertainty, resting.uncertainty), total.p_lower_bound
    )
    rating = read_rating(METER_FIELDS, raw)
    return Power(watts, share_of(rating, watts), rating, rested)


def _background(raw: Mapping[str, str], way: str) -> Measured:
    """The rest of the house; a display's first figure is exactly that."""
    noted = read_optional(METER_FIELDS, raw, "idle" if way == "idle" else "background")
    return (
        DEFAULT_BACKGROUND
        if noted is None
        else Measured(noted, in_quadrature(BACKGROUND_DRIFT_SHARE * noted, BACKGROUND_DRIFT_WATTS))
    )


def _from_count(raw: Mapping[str, str]) -> Measured:
    """Flashes counted: as many intervals as flashes, less one; nobody is sure of the last one either way."""
    flashes, seconds = read_number(METER_FIELDS, raw, "flashes"), read_number(METER_FIELDS, raw, "seconds")
    per_flash = JOULES_PER_KWH / read_number(METER_FIELDS, raw, "impulses") / seconds
    return Measured(
        per_flash * max(flashes - 1.0, 0.0), per_flash * uniform_uncertainty(1.0), _resting_probability(seconds)
    )


def _from_taps(raw: Mapping[str, str]) -> tuple[Measured, float]:
    taps = read_numbers(METER_FIELDS, raw, "taps")
    if len(taps) < MIN_TAPS:
        raise InvalidReading("too-few", "taps")
    intervals = [later - earlier for earlier, later in pairwise(taps)]
    usual = median(intervals)
    joules = JOULES_PER_KWH / read_number(METER_FIELDS, raw, "impulses")
    spread = in_quadrature(1.5 * median([abs(i - usual) for i in intervals]), TAP_SECONDS) / len(intervals) ** 0.5
    watts = joules / usual
    rested = max(1.0 - len(intervals) * usual / (taps[-1] - taps[0]), 0.0)
    return Measured(watts, watts * 1.25 * spread / usual), rested


def _from_register(raw: Mapping[str, str]) -> Measured:
    """Two readings of a register that cuts off what lies below its last digit."""
    before, after = read_number(METER_FIELDS, raw, "before"), read_number(METER_FIELDS, raw, "after")
    if after < before:
        raise InvalidReading("backwards", "after")
    hours = read_number(METER_FIELDS, raw, "minutes") / 60.0
    digit = 0.1 ** max(_decimals(raw["before"]), _decimals(raw["after"]))
    watts = 1000.0 * (after - before) / hours
    return Measured(watts, triangular_uncertainty(1000.0 * digit / hours), _resting_probability(3600.0 * hours))


def _from_display(raw: Mapping[str, str]) -> Measured:
    shown = read_number(METER_FIELDS, raw, "drawing")
    read_number(METER_FIELDS, raw, "idle")
    return Measured(shown, in_quadrature(DISPLAY_SHARE * shown, DISPLAY_WATTS))


def _resting_probability(seconds: float) -> float:
    return seconds / (seconds + CYCLING_SECONDS)


def _decimals(written: str) -> int:
    return len(written.replace(",", ".").partition(".")[2])


def median(values: Sequence[float]) -> float:
    """The middle value, or the mean of the two in the middle."""
    ordered, half = sorted(values), len(values) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2.0
