"""What an oven should draw by its rating plate, and how sure that is.

Rated power holds at the rated voltage and goes with its square. A sound heating appliance may draw from 10 % less to
5 % (or 20 W) more than its plate, one of 25 to 200 W a tenth either way (IEC 60335-1 clause 10.1, from memory); the
supply may be a tenth off either way (IEC 60038, EN 50160). Without a plate the setting is taken as a usual heater.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from triage.engine.readings.encoding import Field, FieldTable, read_optional
from triage.engine.readings.measured import Measured, in_quadrature, uniform_uncertainty

HEATING_APPLIANCE_WATTS = 200.0
DEFAULT_HEATER = Measured(
    2000.0, 500.0
)  # fan ring 1.8-2.5, bottom 1.0-1.4, grill 1.5-2.8 kW: common practice, no source
SETTING_SHARE_OF_PLATE = Measured(
    0.8, 0.15
)  # one setting's share of a plate that counts everything; author's judgement
SUPPLY_TOLERANCE = 0.10
VOLTS_UNCERTAINTY = 2.0
NOMINAL_VOLTS = 230.0

RATING_FIELDS: Mapping[str, Field] = {
    "plate": Field("p", 200, 8_000),
    "whole-plate": Field("t", 500, 16_000),
    "rated-volts": Field("r", 100, 440),
    "supply-volts": Field("v", 90, 450),
}


@dataclass(frozen=True, slots=True)
class Rating:
    """`expected` watts at the supply as it is; `known` when a plate was read."""

    expected: Measured
    known: bool


def read_rating(table: FieldTable, raw: Mapping[str, str]) -> Rating:
    """What the plate and the supply let one expect. `plate` is the setting's own rating, `whole-plate` the oven's."""
    plate, whole = read_optional(table, raw, "plate"), read_optional(table, raw, "whole-plate")
    rated_volts, volts = read_optional(table, raw, "rated-volts"), read_optional(table, raw, "supply-volts")
    if plate is not None:
        rated = Measured(plate, 0.0)
    elif whole is not None:
        rated = Measured(whole * SETTING_SHARE_OF_PLATE.value, whole * SETTING_SHARE_OF_PLATE.uncertainty)
    else:
        rated = DEFAULT_HEATER
    low, high = plate_band(rated.value)
    nominal = NOMINAL_VOLTS if rated_volts is None else rated_volts
    squared = 1.0 if volts is None else (volts / nominal) ** 2
    volts_unsure = uniform_uncertainty(SUPPLY_TOLERANCE) if volts is None else VOLTS_UNCERTAINTY / volts
    watts = (low + high) / 2.0 * squared
    unsure = in_quadrature(
        rated.uncertainty / rated.value, uniform_uncertainty((high - low) / (low + high)), 2.0 * volts_unsure
    )
    return Rating(Measured(watts, watts * unsure), plate is not None or whole is not None)


def plate_band(watts: float) -> tuple[float, float]:
    """The least and most a sound appliance of that plate draws at its rated voltage."""
    if watts <= HEATING_APPLIANCE_WATTS:
        return 0.9 * watts, 1.1 * watts
    return 0.9 * watts, watts + max(0.05 * watts, 20.0)


def power_at(watts: float, rated_volts: float, volts: float) -> float:
    """What an element of that rating draws at another voltage: the resistance stays, so it goes with the square."""
    return watts * (volts / rated_volts) ** 2


def share_of(rating: Rating, watts: Measured) -> Measured:
    """Measured over expected."""
    share = watts.value / rating.expected.value
    unsure = in_quadrature(
        watts.uncertainty / rating.expected.value, share * rating.expected.uncertainty / rating.expected.value
    )
    return Measured(share, unsure, watts.p_lower_bound)
