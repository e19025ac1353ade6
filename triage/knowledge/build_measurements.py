"""How numbers answer an observation: the `reading` part of an entry, with the span of each option."""

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
    """The gauge of an observation, or None where it is answered in words only."""
    below = entry.below("reading")
    if below is None or not entry.has("reading"):
        return None
    kind = below.choice("kind", READERS)
    quantity = below.choice("quantity", QUANTITIES[kind])
    patterned = QUANTITIES[kind] == ("pattern",)
    patterns = _read_patterns(below, options) if patterned else {}
    beyond = _read_overrides(below, options, QUANTITIES[kind])
    spans = {} if patterned else _read_intervals(below, options, beyond)
    below.close()
    return MeasurementSpec(kind, quantity, spans, patterns, beyond)


def refuse_hanging_on_readings(
    file: str, fields: LocatedDict, observations: Mapping[str, Observation], problems: list[PackProblem]
) -> None:
    """What exists only after certain answers may not hang on a reading, whose figures are none of the options."""
    for observation in observations.values():
        entry = Entry(file, observation.id, fields[observation.id], problems)
        for key, gate in (("after", observation.requires_answers), ("first_after", observation.urgent_after)):
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
    for option, named in below.names("beyond"):
        if named.is_known(option, option, list(options)):
            told = named.below(option, required=True)
            if told is not None:
                found[option] = (told.choice("quantity", quantities), told.number("from", -MAX_LIMIT, MAX_LIMIT))
                told.close()
    return found


def _read_intervals(below: Entry, options: Sequence[str], beyond: Iterable[str]) -> dict[str, Interval]:
    """From where to where each option reaches: from one end of the line to the other, without a gap."""
    spans: dict[str, Interval] = {}
    for option, named in below.names("spans", required=True):
        if named.is_known(option, option, list(options)):
            span = _read_interval(named, option)
            if span is not None:
                spans[option] = span
    missing = [option for option in options if option not in spans and option not in beyond]
    if missing:
        below.report("spans", f"leaves out {', '.join(missing)}.", "Give every option its span or put it in `beyond`.")
    line = list(dict.fromkeys(spans.values()))
    if any(one[1] != other[0] for one, other in pairwise(line)):
        below.report("spans", "do not cover the line.", "Write them rising, each from where the one before it ends.")
    return spans


def _read_interval(named: Entry, option: str) -> Interval | None:
    ends = named.fields.get(option)
    named.used.add(option)
    if isinstance(ends, LocatedList) and len(ends) == 2 and all(_is_end(end) for end in ends) and ends[0] < ends[1]:
        return float(ends[0]), float(ends[1])
    named.report(option, f"must be two rising numbers, not {ends!r}.", "Write [low, high].")
    return None


def _is_end(end: object) -> bool:
    return isinstance(end, int | float) and not isinstance(end, bool) and abs(end) <= MAX_LIMIT
