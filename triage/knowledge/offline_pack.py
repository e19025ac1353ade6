"""A pack and its regions as one JSON text, for the engine that runs on the phone.

The shapes of `triage.engine.pack`, field by field under the same names, with what is at its default left out, so that
a new field travels by itself. What takes the most room has a short form: a row of probabilities is seventeen digits a
number, the frequency words it was made of are one letter each ("a--d-"), and the phone works the numbers out by the
same arithmetic. An effect is `[condition, row, options...]`, a pair a plain list, and an id stands only as the key of
its shape. What a phone never reasons with is left out. Everything keeps the pack's order: one pack, one text.
"""

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import MISSING, Field, dataclass, fields, is_dataclass
from enum import Enum
from hashlib import sha256
from typing import Any

from triage.engine.frequency import FREQUENCIES, FrequencyTable, Row, Words, distribution
from triage.engine.pack import Condition, Effect, Fault, FaultPair, Observation, Pack, Region

DIGEST_LENGTH = 16
# What only the repairer's pages work out.
LEFT_OUT = {"parts", "jobs", "costs"}
# The key of a shape, and what its rows are written in anyhow.
NOT_A_FIELD = {"id", "frequencies"}
LETTERS = dict(zip(FREQUENCIES, "abcde-", strict=True))


@dataclass(frozen=True, slots=True)
class OfflinePack:
    """The JSON text and its `version`, which changes with any of its bytes."""

    text: str
    version: str


def build_offline_pack(pack: Pack, regions: Iterable[Region]) -> OfflinePack:
    """What a phone needs to know to go through a check alone."""
    content = {
        **{name: worth for name, worth in _shape(pack).items() if name not in LEFT_OUT},
        "conditions": {c.id: _condition(c) for c in pack.conditions.values()},
        "observations": {o.id: _observation(pack, o) for o in pack.observations.values()},
        "faults": {f.id: _fault(pack, f) for f in pack.faults.values()},
        "fault_pairs": [_pair(pair) for pair in pack.fault_pairs],
        "out_of_scope": [[*pair, reason] for pair, reason in pack.out_of_scope.items()],
        "regions": {region.id: _shape(region) for region in regions},
    }
    text = json.dumps(content, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    return OfflinePack(text, sha256(text.encode()).hexdigest()[:DIGEST_LENGTH])


def _condition(condition: Condition) -> dict[str, Any]:
    baseline = _row(condition.baseline, condition.frequencies, condition.floor)
    return _shape(condition) | {"floor": condition.floor, "baseline": baseline}


def _observation(pack: Pack, observation: Observation) -> dict[str, Any]:
    """A variant's own question needs no table: its answers are taken at their word."""
    shape = _shape(observation)
    shape.pop("answer_probabilities", None)
    if observation.reports in pack.conditions:
        baseline = pack.conditions[str(observation.reports)].baseline
        shape["answer_probabilities"] = _table(observation.answer_probabilities, observation.frequencies, baseline)
    return shape


def _fault(pack: Pack, fault: Fault) -> dict[str, Any]:
    return _shape(fault) | {"effects": [_effect(pack, effect) for effect in fault.effects]}


def _effect(pack: Pack, effect: Effect) -> list[Any]:
    row = _row(effect.levels, effect.frequencies, pack.conditions[effect.condition].floor)
    return [effect.condition, row, *sorted(effect.when or ())]


def _row(row: Row, frequencies: Words, floor: float) -> str | list[float]:
    """The row as letters, or in full where it is not what its words say: it was learnt from outcomes."""
    return _letters(frequencies) if frequencies and distribution(frequencies, floor) == row else list(row)


def _table(rows: Sequence[Row], table: FrequencyTable | None, baseline: Row) -> list[Any]:
    """`[trust, floor, letters of each level]`, or every row in full."""
    if table is None or table.probabilities(baseline) != tuple(rows):
        return [list(row) for row in rows]
    return [table.trust, table.floor, [_letters(row) for row in table.rows]]


def _letters(frequencies: Words) -> str:
    return "".join(LETTERS[word] for word in frequencies)


def _pair(pair: FaultPair) -> list[Any]:
    return [pair.cause, pair.effect, pair.rate_per_1000, *([1] if pair.causal else [])]


def _shape(value: Any) -> dict[str, Any]:
    """A shape's fields, but for its id and those at their default."""
    changed = {f.name: getattr(value, f.name) for f in fields(value) if getattr(value, f.name) != _default(f)}
    return {name: _plain(worth) for name, worth in changed.items() if name not in NOT_A_FIELD}


def _plain(value: Any) -> Any:
    """A value as JSON knows it: shapes and mappings as objects, sets in the alphabet's order."""
    if isinstance(value, Enum):
        return value.value
    if is_dataclass(value) and not isinstance(value, type):
        return _shape(value)
    if isinstance(value, Mapping):
        return {key: _plain(worth) for key, worth in value.items() if isinstance(key, str)}
    if isinstance(value, frozenset):
        return sorted(map(_plain, value))
    if isinstance(value, tuple):
        return [_plain(item) for item in value]
    return value


def _default(of: Field[Any]) -> Any:
    return of.default_factory() if of.default_factory is not MISSING else of.default
