"""From a written reading to evidence: how likely it is under each option of its observation (Pearl's virtual evidence).

The likelihood of an option is that of the measurement if the true value lies somewhere in the option's span
(`measured.py`); the likelihood of a level is then the sum over options of what people answer at that level times the
option's. An answer that is an option's id is the same with all weight on that option, so both kinds of answer are
one rule. No limit is hard here, except a red flag's: it is raised as soon as the value, give or take one standard
uncertainty, touches the flagged span, which is the stricter reading.
"""

from collections.abc import Callable, Mapping
from functools import lru_cache
from math import inf
from operator import mul

from triage.engine.frequency import Row
from triage.engine.pack import CANT_TELL, Observation
from triage.engine.readings import gasket, meter, preheat, run_on, thermometer
from triage.engine.readings.encoding import InvalidReading
from triage.engine.readings.gasket import Gasket
from triage.engine.readings.measured import interval_likelihoods, overlaps, probability_above

Result = meter.Power | thermometer.Temperatures | run_on.RunOn | preheat.Preheat | Gasket

READERS: Mapping[str, Callable[[str], Result]] = {
    "meter": meter.read_meter,
    "thermometer": thermometer.read_thermometer,
    "run-on": run_on.read_run_on,
    "preheat": preheat.read_preheat,
    "gasket": gasket.read_gasket,
}
QUANTITIES: Mapping[str, tuple[str, ...]] = {
    "meter": ("watts", "share"),
    "thermometer": ("offset", "swing", "climb", "duty"),
    "run-on": ("minutes",),
    "preheat": ("ratio",),
    "gasket": ("pattern",),
}
PATTERNS = ("tight", "spot", "side")


def invalid_reason(observation: Observation, answer: str) -> str | None:
    """Why `answer` cannot be used, or None where it is an option, "can't tell" or a reading."""
    if answer == CANT_TELL or answer in observation.options:
        return None
    if observation.measurement is None:
        return "not-an-option"
    try:
        READERS[observation.measurement.kind](answer)
    except InvalidReading as fault:
        return fault.reason
    return None


def level_likelihood(observation: Observation, answer: str) -> Row:
    """The likelihood of each level of what the observation reports, for an answer that is not `unreadable`."""
    if answer in observation.options:
        place = observation.options.index(answer)
        return tuple(row[place] for row in observation.answer_probabilities)
    return _level_likelihood(observation, answer)


def flags_raised_by(observation: Observation, answer: str) -> tuple[str, ...]:
    """The ids of the red flags an answer raises."""
    if not observation.flags:
        return ()
    if answer in observation.flags:
        return (observation.flags[answer],)
    if observation.measurement is None or answer == CANT_TELL or answer in observation.options:
        return ()
    return _reached_flags(observation, answer)


def option_likelihoods(observation: Observation, answer: str) -> Mapping[str, float]:
    """The likelihood of each option for a reading, in the order of the options."""
    gauge = observation.measurement
    if gauge is None:
        raise InvalidReading("not-a-reading")
    result = READERS[gauge.kind](answer)
    if isinstance(result, Gasket):
        return {option: result.likelihoods[name] for option, name in gauge.patterns.items()}
    measured = result.quantities[gauge.quantity]
    told = dict(zip(gauge.intervals, interval_likelihoods(measured, list(gauge.intervals.values())), strict=True))
    for option, (quantity, limit) in gauge.overrides.items():
        chance = probability_above(result.quantities[quantity], limit)
        told = {other: value * (1.0 - chance) for other, value in told.items()} | {option: chance}
    return {option: told.get(option, 0.0) for option in observation.options}


@lru_cache(maxsize=1024)
def _level_likelihood(observation: Observation, answer: str) -> Row:
    told = tuple(option_likelihoods(observation, answer).values())
    return tuple(sum(map(mul, row, told)) for row in observation.answer_probabilities)


@lru_cache(maxsize=1024)
def _reached_flags(observation: Observation, answer: str) -> tuple[str, ...]:
    gauge = observation.measurement
    result = None if gauge is None else READERS[gauge.kind](answer)
    if gauge is None or result is None or isinstance(result, Gasket):
        return ()
    measured = result.quantities[gauge.quantity]
    touched = {option for option in gauge.intervals if overlaps(measured, gauge.open_interval(option))}
    touched |= {
        o for o, (quantity, limit) in gauge.overrides.items() if overlaps(result.quantities[quantity], (limit, inf))
    }
    return tuple(flag for option, flag in observation.flags.items() if option in touched)
