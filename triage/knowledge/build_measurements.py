"""How numbers answer an observation: the `measurement` part of an entry, with the interval of each option."""

from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise

from triage.engine.pack import MeasurementSpec, Observation
from triage.engine.readings.evidence import PATTERNS, QUANTITIES, READERS
from triage.knowledge.entry import Entry
from triage.knowledge.problems import PackProblem
from triage.knowledge.yaml_reader import LocatedDict, LocatedList

Interval = tuple[float, float]
MAX_LIMIT = 1e6


def read_measurement(entry: Entry, options: Sequence[str]) -> MeasurementSpec | None:
    """How figures answer an observation, or None where it is answered in words only."""
    below = entry.below("measurement")
    if below is None or not entry.has("measurement"):
        return None
    kind = below.choice("kind", READERS)
    quantity = below.choice("quantity", QUANTITIES[kind])
    patterned = QUANTITIES[kind] == ("pattern",)
    patterns = _read_patterns(below, options) if patterned else {}
    overrides = _read_overrides(below, options, QUANTITIES[kind])
    intervals = {} if patterned else _read_intervals(below, options, overrides)
    below.close()
    return MeasurementSpec(kind, quantity, intervals, patterns, overrides)


def refuse_hanging_on_readings(
    file: str, fields: LocatedDict, observations: Mapping[str, Observation], problems: list[PackProblem]
) -> None:
    """What exists only after certain answers may not hang on a reading, whose figures are none of the options."""
    for observation in observations.values():
        entry = Entry(file, observation.id, fields[observation.id], problems)
        for key, gate in (
            ("requires_answers", observation.requires_answers),
            ("urgent_after", observation.urgent_after),
        ):
            for name in gate:
                if name in observations and observations[name].measurement is not None:
                    entry.report(key, f"hangs on {name}, which may be answered in figures.", "Name another question.")


def _read_patterns(below: Entry, options: Sequence[str]) -> dict[str, str]:
    found = {
        option: named.choice(option, PATTERNS)
        for option, named in below.names("patterns", required=True)
        if named.is_known(option, option, list(options))
    }
    if set(found.values()) != set(PATTERNS):
        below.report("patterns", "does not name every pattern.", f"Give an option to each of: {', '.join(PATTERNS)}.")
    return found


def _read_overrides(below: Entry, options: Sequence[str], quantities: Iterable[str]) -> dict[str, tuple[str, float]]:
    found = {}
    for option, named in below.names("overrides"):
        if named.is_known(option, option, list(options)):
            override = named.below(option, required=True)
            if override is not None:
                found[option] = (
                    override.choice("quantity", quantities),
                    override.number("from", -MAX_LIMIT, MAX_LIMIT),
                )
                override.close()
    return found


def _read_intervals(below: Entry, options: Sequence[str], overrides: Iterable[str]) -> dict[str, Interval]:
    """From where to where each option reaches: from one end of the line to the other, without a gap."""
    intervals: dict[str, Interval] = {}
    for option, named in below.names("intervals", required=True):
        if named.is_known(option, option, list(options)):
            interval = _read_interval(named, option)
            if interval is not None:
                intervals[option] = interval
    missing = [option for option in options if option not in intervals and option not in overrides]
    if missing:
        below.report(
            "intervals", f"leaves out {', '.join(missing)}.", "Give every option its interval or put it in `overrides`."
        )
    line = list(dict.fromkeys(intervals.values()))
    if any(one[1] != other[0] for one, other in pairwise(line)):
        below.report(
            "intervals", "do not cover the line.", "Write them rising, each from where the one before it ends."
        )
    return intervals


def _read_interval(named: Entry, option: str) -> Interval | None:
    ends = named.fields.get(option)
    named.used.add(option)
    if isinstance(ends, LocatedList) and len(ends) == 2 and all(_is_end(end) for end in ends) and ends[0] < ends[1]:
        return float(ends[0]), float(ends[1])
    named.report(option, f"must be two rising numbers, not {ends!r}.", "Write [low, high].")
    return None


def _is_end(end: object) -> bool:
    return isinstance(end, int | float) and not isinstance(end, bool) and abs(end) <= MAX_LIMIT
