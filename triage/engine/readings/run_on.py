"""The run-on test: how long the cooling fan goes on after switch-off, looked at now and then.

Between the last time it was heard and the first time it was found still lies the truth, anywhere (a rectangle); a
fan that has not been found still has run at least that long. Running when the oven is stone cold is no run-on at all.
After the grill or a cleaning run a fan may go on half as long again (90 minutes instead of 60, common practice).
"""

from collections.abc import Mapping
from dataclasses import dataclass

from triage.engine.readings.encoding import Field, InvalidReading, decode_fields, read_number, read_optional
from triage.engine.readings.measured import Measured, in_quadrature, uniform_uncertainty

CLOCK_UNCERTAINTY_MINUTES = 0.25
MUCH_HEAT_FACTOR = 1.5
ENDLESS_MINUTES = 24 * 60.0

RUN_ON_FIELDS: Mapping[str, Field] = {
    "heard": Field("h", 0, 1_440),
    "stopped": Field("s", 0, 1_440),
    "cold": Field("c", 0, 1, whole=True),
    "much-heat": Field("g", 0, 1, whole=True),
}


@dataclass(frozen=True, slots=True)
class RunOn:
    """`minutes` as after ordinary baking; `running` while nobody has found the fan still."""

    minutes: Measured
    running: bool

    @property
    def quantities(self) -> Mapping[str, Measured]:
        return {"minutes": self.minutes}


def read_run_on(text: str) -> RunOn:
    """The run-on a written reading stands for: `heard` and `stopped` in minutes after switch-off. Raises
    Unreadable."""
    raw = decode_fields(RUN_ON_FIELDS, text)
    heard, stopped = read_number(RUN_ON_FIELDS, raw, "heard"), read_optional(RUN_ON_FIELDS, raw, "stopped")
    scale = MUCH_HEAT_FACTOR if read_optional(RUN_ON_FIELDS, raw, "much-heat") else 1.0
    if stopped is None:
        if read_optional(RUN_ON_FIELDS, raw, "cold"):
            return RunOn(Measured(ENDLESS_MINUTES, CLOCK_UNCERTAINTY_MINUTES, p_lower_bound=1.0), True)
        return RunOn(Measured(heard / scale, CLOCK_UNCERTAINTY_MINUTES, p_lower_bound=1.0), True)
    if stopped < heard:
        raise InvalidReading("backwards", "stopped")
    unsure = in_quadrature(uniform_uncertainty((stopped - heard) / 2.0), CLOCK_UNCERTAINTY_MINUTES)
    return RunOn(Measured((heard + stopped) / 2.0 / scale, unsure / scale), False)
