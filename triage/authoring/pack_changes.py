"""What differs between two packs, part by part: added, removed, or changed with what was and what is.

The effects of a fault are told apart from its own fields, because they are evidence about conditions. Texts are
compared entry by entry as they stand in the files; they change what people read and never how a check ends.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from enum import Enum
from pathlib import Path
from typing import Any

from triage.engine.pack import Effect, Fault, FaultPair, Pack
from triage.knowledge.yaml_reader import read_yaml

ADDED, REMOVED, CHANGED = "added", "removed", "changed"
MAX_LENGTH = 60
EXACT, READABLE = 17, 3

# The mappings of a pack whose entries are compared one by one, with the word for one entry.
ENTRIES = {
    "variants": "kind of oven",
    "conditions": "condition",
    "observations": "observation",
    "faults": "fault",
    "red_flags": "red flag",
    "tasks": "task",
    "parts": "part",
    "jobs": "job for",
}
# What is compared as a whole.
WHOLES = {
    "fault_pairs": "pairs of faults",
    "complaints": "start page",
    "look_alikes": "look-alikes",
    "retired": "retired ids",
    "out_of_scope": "ways out",
    "limits": "limits",
    "costs": "costs",
}
EFFECT = "effect"
TEXT = "text"


@dataclass(frozen=True, slots=True)
class Change:
    """One difference. `part` is the field of Pack (or `effects`, `texts`), `name` the entry in it, `what` the word for
    it, `details` the fields that differ."""

    part: str
    what: str
    name: str
    how: str
    details: tuple[str, ...] = ()

    def __str__(self) -> str:
        details = f": {'; '.join(self.details)}" if self.details else ""
        return f"{self.label} {self.how}{details}"

    @property
    def label(self) -> str:
        return f"{self.what} {self.name}".strip()


def changes(old: Pack, new: Pack) -> tuple[Change, ...]:
    """Every difference that a check could notice, in the pack's order."""
    found: list[Change] = []
    for part, what in ENTRIES.items():
        found += _entries(part, what, getattr(old, part), getattr(new, part))
        if part == "faults":
            found += _all_effects(old, new)
    for part, what in WHOLES.items():
        compared = _pairs if part == "fault_pairs" else _whole
        details = compared(getattr(old, part), getattr(new, part))
        if details:
            found.append(Change(part, what, "", CHANGED, details))
    return tuple(found)


def text_changes(old: Path, new: Path) -> tuple[Change, ...]:
    """Every entry of a text file that was added, removed or changed."""
    names = {path.relative_to(folder) for folder in (old, new) for path in (folder / "text").glob("*/*.yaml")}
    found: list[Change] = []
    for name in sorted(names):
        before, after = (dict(read_yaml(folder / name, "", []) or {}) for folder in (old, new))
        where = name.relative_to("text").with_suffix("").as_posix()
        for entry in dict.fromkeys([*before, *after]):
            if before.get(entry) != after.get(entry):
                how = ADDED if entry not in before else REMOVED if entry not in after else CHANGED
                found.append(Change("texts", TEXT, f"{where}: {entry}", how))
    return tuple(found)


def _entries(part: str, what: str, old: Mapping[str, Any], new: Mapping[str, Any]) -> Iterator[Change]:
    for name in dict.fromkeys([*old, *new]):
        if name not in new or name not in old:
            yield Change(part, what, name, REMOVED if name not in new else ADDED)
            continue
        details = _fields(old[name], new[name])
        if details:
            yield Change(part, what, name, CHANGED, details)


def _all_effects(old: Pack, new: Pack) -> Iterator[Change]:
    """The changed effects of the faults that both packs have."""
    levels = {condition.id: condition.levels for pack in (old, new) for condition in pack.conditions.values()}
    for name in old.faults:
        if name in new.faults:
            yield from _effects(old.faults[name], new.faults[name], levels)


def _effects(old: Fault, new: Fault, levels: Mapping[str, tuple[str, ...]]) -> Iterator[Change]:
    before, after = effects_by_condition(old), effects_by_condition(new)
    for condition in dict.fromkeys([*before, *after]):
        was, now = before.get(condition), after.get(condition)
        if _differ(was, now):
            how = ADDED if was is None else REMOVED if now is None else CHANGED
            details = _levels(was or (), now or (), levels[condition])
            yield Change("effects", EFFECT, effect_name(old.id, condition), how, details)


def _levels(old: tuple[Effect, ...], new: tuple[Effect, ...], levels: tuple[str, ...]) -> tuple[str, ...]:
    """The levels whose chance differs, for each kind of oven the effects are told for."""
    before, after = ({effect.when: dict(zip(levels, effect.levels, strict=False)) for effect in e} for e in (old, new))
    found = []
    for when in dict.fromkeys([*before, *after]):
        on = f" on {_shown(when, READABLE)}" if when else ""
        was, now = before.get(when, {}), after.get(when, {})
        found += [
            f"{level}{on} {_became(was.get(level), now.get(level))}"
            for level in levels
            if _differ(was.get(level), now.get(level))
        ]
    return tuple(found)


def effect_name(fault: str, condition: str) -> str:
    return f"{fault} on {condition}"


def effects_by_condition(fault: Fault) -> dict[str, tuple[Effect, ...]]:
    """The effects of a fault, those on one condition together."""
    found: dict[str, tuple[Effect, ...]] = {}
    for effect in fault.effects:
        found[effect.condition] = (*found.get(effect.condition, ()), effect)
    return found


def _fields(old: Any, new: Any) -> tuple[str, ...]:
    names = [field.name for field in fields(old) if field.name not in ("effects", "frequencies")]
    pairs = [(name, getattr(old, name), getattr(new, name)) for name in names]
    return tuple(f"{name} {_became(was, now)}" for name, was, now in pairs if _differ(was, now))


def _pairs(old: tuple[FaultPair, ...], new: tuple[FaultPair, ...]) -> tuple[str, ...]:
    """Pairs of faults that came, went or changed their rate."""
    before, after = ({f"{pair.cause} + {pair.effect}": pair for pair in pairs} for pairs in (old, new))
    found = _entries("pairs", "", before, after)
    return tuple(f"{pair.name} {pair.how if pair.how != CHANGED else ', '.join(pair.details)}" for pair in found)


def _whole(old: Any, new: Any) -> tuple[str, ...]:
    """The entries that differ between two lists, or the two values where they are no lists."""
    if not _differ(old, new):
        return ()
    if not isinstance(old, tuple):
        return (_became(old, new),)
    gone = [f"without {_short(item)}" for item in old if all(_differ(item, other) for other in new)]
    come = [f"with {_short(item)}" for item in new if all(_differ(item, other) for other in old)]
    return (*gone, *come) or ("in another order",)


def _differ(old: Any, new: Any) -> bool:
    return _shown(old, EXACT) != _shown(new, EXACT)


def _became(old: Any, new: Any) -> str:
    return f"{_short(old)} → {_short(new)}"


def _short(value: Any) -> str:
    text = _shown(value, READABLE) or "nothing"
    return text if len(text) <= MAX_LENGTH else f"{text[: MAX_LENGTH - 1]}…"


def _shown(value: Any, digits: int) -> str:
    """A value of a pack in words; equal values have equal words whatever the order of a set."""
    if isinstance(value, Enum):
        return str(value.value)
    if isinstance(value, float):
        return f"{value:.{digits}g}"
    if isinstance(value, frozenset):
        return " ".join(sorted(value))
    if isinstance(value, Mapping):
        return ", ".join(f"{_shown(name, digits)}: {_shown(item, digits)}" for name, item in value.items())
    if isinstance(value, tuple):
        return " | ".join(_shown(item, digits) for item in value)
    if is_dataclass(value) and not isinstance(value, type):
        return " ".join(_shown(getattr(value, field.name), digits) for field in fields(value))
    return "nothing" if value is None else str(value)
