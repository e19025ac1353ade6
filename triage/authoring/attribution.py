"""Which change of a pack makes a check end differently: each change is tried alone on the old pack.

A change that cannot stand alone (an effect on a condition that only the new pack has) is tried with all others like
it and with everything that was added. A check that no trial changes needs several changes together.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain
from typing import Any

from triage.authoring.pack_changes import ADDED, CHANGED, ENTRIES, Change, effect_name, effects_by_condition
from triage.engine.pack import Effect, Fault, FaultPair, Observation, Pack, Requirement

MAX_TRIALS = 24
TOGETHER = "changes that only work together"


@dataclass(frozen=True, eq=False)
class Trial:
    """The old pack with some of the changes, named after them."""

    name: str
    pack: Pack


def trials(old: Pack, new: Pack, found: Sequence[Change]) -> tuple[Trial, ...]:
    """One trial for each change; for each part of the pack where there are too many to try."""
    units: dict[str, tuple[Change, ...]] = {change.label: (change,) for change in found}
    if len(units) > MAX_TRIALS:
        units = _by_part(found)
    made = {name: with_changes(old, new, unit) for name, unit in units.items()}
    alone = [Trial(name, pack) for name, pack in made.items() if is_consistent(pack)]
    tied = tuple(chain.from_iterable(units[name] for name, pack in made.items() if not is_consistent(pack)))
    together = with_changes(old, new, tuple(change for change in found if change in tied or change.how == ADDED))
    if tied and is_consistent(together):
        alone.append(Trial(TOGETHER, together))
    return tuple(alone)


def _by_part(found: Sequence[Change]) -> dict[str, tuple[Change, ...]]:
    units: dict[str, tuple[Change, ...]] = {}
    for change in found:
        name = f"all changes of {change.part.replace('_', ' ')}"
        units[name] = (*units.get(name, ()), change)
    return units


def with_changes(old: Pack, new: Pack, wanted: Sequence[Change]) -> Pack:
    """The old pack with these changes made."""
    pack = old
    for change in wanted:
        if change.part == "effects":
            pack = _with_effect(pack, new, change.name)
        elif change.part in ENTRIES:
            pack = _with_entry(pack, new, change)
        else:
            pack = replace(pack, **{change.part: getattr(new, change.part)})
    return pack


def _with_entry(pack: Pack, new: Pack, change: Change) -> Pack:
    entries: dict[str, Any] = dict(getattr(pack, change.part))
    after: Mapping[str, Any] = getattr(new, change.part)
    if change.name not in after:
        del entries[change.name]
    elif change.part == "faults" and change.how == CHANGED:
        entries[change.name] = replace(new.faults[change.name], effects=pack.faults[change.name].effects)
    else:
        entries[change.name] = after[change.name]
    part: Any = {change.part: entries}
    changed = replace(pack, **part)
    return replace(changed, fault_pairs=_pairs_of(changed, new, change.name)) if change.part == "faults" else changed


def _pairs_of(pack: Pack, new: Pack, fault: str) -> tuple[FaultPair, ...]:
    """The pairs of a pack, those with `fault` as the new pack has them: their rates follow from the fault's own."""
    others = [pair for pair in pack.fault_pairs if fault not in (pair.cause, pair.effect)]
    own = [pair for pair in new.fault_pairs if fault in (pair.cause, pair.effect)]
    return (*others, *(pair for pair in own if {pair.cause, pair.effect} <= set(pack.faults)))


def _with_effect(pack: Pack, new: Pack, name: str) -> Pack:
    fault, condition = next((f, c) for f, c in _effect_names(pack, new) if effect_name(f, c) == name)
    kept = tuple(effect for effect in pack.faults[fault].effects if effect.condition != condition)
    effects = (*kept, *effects_by_condition(new.faults[fault]).get(condition, ()))
    return replace(pack, faults={**pack.faults, fault: replace(pack.faults[fault], effects=effects)})


def _effect_names(old: Pack, new: Pack) -> Iterator[tuple[str, str]]:
    for fault in new.faults.values():
        if fault.id in old.faults:
            both = dict.fromkeys(effect.condition for f in (old.faults[fault.id], fault) for effect in f.effects)
            yield from ((fault.id, condition) for condition in both)


def is_consistent(pack: Pack) -> bool:
    """Whether everything a pack names is there and every table has the size it must have."""
    return (
        all(_observation_holds(pack, observation) for observation in pack.observations.values())
        and all(_fault_holds(pack, fault) for fault in pack.faults.values())
        and all(c.parent is None or c.parent in pack.variants for c in pack.conditions.values())
        and all(len(c.baseline) == len(c.levels) for c in pack.conditions.values())
        and all(pair.cause in pack.faults and pair.effect in pack.faults for pair in pack.fault_pairs)
        and all(_tasks_hold(pack))
        and all(fault in pack.faults for group in pack.look_alikes for fault in group)
        and all(_answer_holds(pack, *sign) for flag in pack.red_flags.values() for sign in flag.signs)
        and all(_answer_holds(pack, *answer) for line in pack.complaints for answer in line.answers.items())
    )


def _observation_holds(pack: Pack, observation: Observation) -> bool:
    reported = str(observation.reports)
    if reported in pack.conditions:
        levels = len(pack.conditions[reported].levels)
    elif reported in pack.variants:
        levels = len(pack.variants[reported].options)
    else:
        levels = 0 if observation.reports is None else -1
    sizes = all(len(row) == len(observation.options) for row in observation.answer_probabilities)
    flags = all(flag in pack.red_flags for flag in observation.flags.values())
    gates = (*observation.requires_answers.items(), *observation.urgent_after.items())
    waits = all(_answer_holds(pack, parent, option) for parent, options in gates for option in options)
    return (
        len(observation.answer_probabilities) == levels
        and sizes
        and flags
        and waits
        and _kinds_hold(pack, observation.requires_variant)
    )


def _fault_holds(pack: Pack, fault: Fault) -> bool:
    return _kinds_hold(pack, fault.requires_variant) and all(_effect_holds(pack, effect) for effect in fault.effects)


def _effect_holds(pack: Pack, effect: Effect) -> bool:
    condition = pack.conditions.get(effect.condition)
    return condition is not None and len(condition.levels) == len(effect.levels)


def _tasks_hold(pack: Pack) -> Iterator[bool]:
    for task in pack.tasks.values():
        yield _kinds_hold(pack, task.requires_variant)
        yield task.helps | task.cures | task.unsafe_with <= set(pack.faults)
        yield task.not_after | task.only_after <= set(pack.red_flags)


def _kinds_hold(pack: Pack, needs: Requirement) -> bool:
    return all(variant in pack.variants and o <= set(pack.variants[variant].options) for variant, o in needs.items())


def _answer_holds(pack: Pack, observation: str, option: str) -> bool:
    return observation in pack.observations and option in pack.observations[observation].options
