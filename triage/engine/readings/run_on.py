"""The run-on test: how long the cooling fan goes on after switch-off, looked at now and then.

Between the last time it was heard and the first time it was found still lies the truth, anywhere (a rectangle); a
fan that has not been found still has run at least that long. Running when the oven is stone cold is no run-on at all.
After the grill or a cleaning run a fan may go on half as long again (90 minutes instead of 60, common practice).
"""

from collections.abc import Mapping
from dataclasses import dataclass

from triage.engine.readings.measured import Measured, rectangle, together
from triage.engine.readings.written import Field, Unreadable, fields_of, number, optional

CLOCK_MINUTES = 0.25
LONGER_AFTER_MUCH_HEAT = 1.5
WITHOUT_END = 24 * 60.0

FIELDS: Mapping[str, Field] = {
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


def read(text: str) -> RunOn:
    """The run-on a written reading stands for: `heard` and `stopped` in minutes after switch-off. Raises
    Unreadable."""
    raw = fields_of(FIELDS, text)
    heard, stopped = number(FIELDS, raw, "heard"), optional(FIELDS, raw, "stopped")
    scale = LONGER_AFTER_MUCH_HEAT if optional(FIELDS, raw, "much-heat") else 1.0
    if stopped is None:
        if optional(FIELDS, raw, "cold"):
            return RunOn(Measured(WITHOUT_END, CLOCK_MINUTES, at_least=1.0), True)
        return RunOn(Measured(heard / scale, CLOCK_MINUTES, at_least=1.0), True)
    if stopped < heard:
        raise Unreadable("backwards", "stopped")
    unsure = together(rectangle((stopped - heard) / 2.0), CLOCK_MINUTES)
    return RunOn(Measured((heard + stopped) / 2.0 / scale, unsure / scale), False)
