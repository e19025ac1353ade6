"""A pack and its regions as one JSON text, for the engine that runs on the phone.

The shapes of `triage.engine.pack`, field by field under the same names, with what is at its default left out, so that
a new field travels by itself. What takes the most room has a short form: rows of chances are words (`phone_rows`), an
effect is `[condition, row, options...]`, a pair a plain list, and an id stands only as the key of its shape. What a
phone never reasons with is left out. Everything keeps the pack's order: one pack, one text.
"""

import json
from collections.abc import Iterable, Mapping
from dataclasses import MISSING, Field, dataclass, fields, is_dataclass
from enum import Enum
from hashlib import sha256
from typing import Any

from triage.engine.pack import Condition, Effect, Fault, FaultPair, Observation, Pack, Region
from triage.knowledge.phone_rows import short_row, short_table

DIGEST_LENGTH = 16
# What only the repairer's pages work out.
LEFT_OUT = ("parts", "jobs", "costs")


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
    return _shape(condition) | {"floor": condition.floor, "baseline": short_row(condition.baseline, condition.floor)}


def _observation(pack: Pack, observation: Observation) -> dict[str, Any]:
    """A variant's own question needs no table: its answers are taken at their word."""
    shape = _shape(observation)
    shape.pop("answer_probabilities", None)
    if observation.reports in pack.conditions:
        table = short_table(observation.answer_probabilities, pack.conditions[str(observation.reports)].baseline)
        shape["answer_probabilities"] = table or [list(row) for row in observation.answer_probabilities]
    return shape


def _fault(pack: Pack, fault: Fault) -> dict[str, Any]:
    return _shape(fault) | {"effects": [_effect(pack, effect) for effect in fault.effects]}


def _effect(pack: Pack, effect: Effect) -> list[Any]:
    row = short_row(effect.levels, pack.conditions[effect.condition].floor)
    return [effect.condition, row, *sorted(effect.when or ())]


def _pair(pair: FaultPair) -> list[Any]:
    return [pair.cause, pair.effect, pair.rate_per_1000, *([1] if pair.causal else [])]


def _shape(value: Any) -> dict[str, Any]:
    """A shape's fields, but for its id and those at their default."""
    changed = {f.name: getattr(value, f.name) for f in fields(value) if getattr(value, f.name) != _default(f)}
    return {name: _plain(worth) for name, worth in changed.items() if name != "id"}


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
