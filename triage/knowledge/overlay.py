"""Numbers learnt from outcomes, laid over a pack as its authors wrote it.

Only numbers change: call rates, how faults leave conditions, what people answer. Red flags, bands, gates and tasks
are not numbers and cannot be written here. Three kinds of numbers stay as written, too:

- how a fault of the band make-safe leaves the oven, so that no outcome can make danger look like something else;
- the answers to a question that has a danger sign among them, and to one that records what came of a task;
- the answers about the kind of oven, which are taken at their word.

A dangerous fault may become more likely, never less: `lowered_dangers` names those whose chance before any answer
falls in any region, and no such overlay is loaded or accepted.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from triage.engine.belief import infer_belief
from triage.engine.frequency import Row
from triage.engine.model import compile_model
from triage.engine.pack import Band, Effect, Fault, Observation, Pack, Region
from triage.knowledge.problems import PackProblem

EffectKey = tuple[str, str, frozenset[str] | None]
AnswerKey = tuple[str, str]

ROUNDING = 2e-5


@dataclass(frozen=True, slots=True, eq=False)
class Numbers:
    """What takes the place of the pack's own: `calls[fault]`, `effects[fault, condition, when]` over the condition's
    levels, `answers[observation, level]` over the observation's options."""

    calls: Mapping[str, float] = field(default_factory=lambda: MappingProxyType({}))
    effects: Mapping[EffectKey, Row] = field(default_factory=lambda: MappingProxyType({}))
    answers: Mapping[AnswerKey, Row] = field(default_factory=lambda: MappingProxyType({}))


def apply_overlay(pack: Pack, numbers: Numbers, version: str) -> Pack:
    """The pack with these numbers. A pair of faults keeps its share of the first fault's calls."""
    times = {fault: calls / pack.faults[fault].calls_per_1000 for fault, calls in numbers.calls.items()}
    return replace(
        pack,
        version=version,
        faults={fault.id: _fault(fault, numbers) for fault in pack.faults.values()},
        fault_pairs=tuple(
            replace(pair, rate_per_1000=pair.rate_per_1000 * times.get(pair.cause, 1.0)) for pair in pack.fault_pairs
        ),
        observations={o.id: _observation(pack, o, numbers) for o in pack.observations.values()},
    )


def _fault(fault: Fault, numbers: Numbers) -> Fault:
    effects = tuple(
        replace(effect, levels=numbers.effects.get(effect_key(fault, effect), effect.levels))
        for effect in fault.effects
    )
    return replace(fault, calls_per_1000=numbers.calls.get(fault.id, fault.calls_per_1000), effects=effects)


def _observation(pack: Pack, observation: Observation, numbers: Numbers) -> Observation:
    condition = pack.conditions.get(observation.reports or "")
    if condition is None:
        return observation
    told = zip(condition.levels, observation.answer_probabilities, strict=True)
    return replace(
        observation,
        answer_probabilities=tuple(numbers.answers.get((observation.id, level), row) for level, row in told),
    )


def effect_key(fault: Fault, effect: Effect) -> EffectKey:
    return fault.id, effect.condition, effect.when


def learnable_effects(pack: Pack) -> dict[EffectKey, Row]:
    """Every effect whose numbers outcomes may change, as it stands."""
    cures = {observation.reports for observation in pack.observations.values() if observation.task}
    return {
        effect_key(fault, effect): effect.levels
        for fault in pack.faults.values()
        if fault.band is not Band.MAKE_SAFE
        for effect in fault.effects
        if effect.condition not in cures
    }


def learnable_answers(pack: Pack) -> dict[AnswerKey, Row]:
    """Every row of answers that outcomes may change, as it stands."""
    return {
        (observation.id, level): row
        for observation in pack.observations.values()
        if not observation.flags and not observation.task
        for condition in pack.conditions.values()
        if condition.id == observation.reports
        for level, row in zip(condition.levels, observation.answer_probabilities, strict=True)
    }


def faults_only(pack: Pack) -> Pack:
    """The pack with nothing to ask: enough for the chances before any answer, and compiled in a moment."""
    return replace(pack, conditions={}, observations={}, red_flags={}, tasks={})


def observed_by_technician(pack: Pack) -> Pack:
    """The pack as a van sees it: `sessions` is how much oftener a fault comes to a tool than to a van, so it is one."""
    rates = {
        pair: pair.rate_per_1000 / (pack.faults[pair.cause].online_ratio if pair.causal else 1.0)
        for pair in pack.fault_pairs
    }
    return replace(
        pack,
        faults={fault.id: replace(fault, online_ratio=1.0) for fault in pack.faults.values()},
        fault_pairs=tuple(replace(pair, rate_per_1000=rate) for pair, rate in rates.items()),
    )


def danger_problems(written: Pack, laid: Pack, regions: Iterable[Region], shown: str) -> list[PackProblem]:
    """What is wrong with the overlay file `shown`, which made `laid` of `written`, about dangerous faults."""
    places: dict[str, list[str]] = {}
    for fault, region in lowered_dangers(written, laid, regions):
        places.setdefault(fault, []).append(region)
    return [
        PackProblem(
            shown,
            1,
            fault,
            f"is less likely than in the pack as written, in {', '.join(dict.fromkeys(found))}.",
            "A dangerous fault may become more likely but never less: learn again, or delete the overlay.",
        )
        for fault, found in places.items()
    ]


def lowered_dangers(written: Pack, laid: Pack, regions: Iterable[Region]) -> Iterator[tuple[str, str]]:
    """Fault and region wherever a fault of the band make-safe is less likely than its authors wrote, before any
    answer, at the tool or at the van."""
    dangers = [fault.id for fault in written.faults.values() if fault.band is Band.MAKE_SAFE]
    views = [
        (faults_only(written), faults_only(laid)),
        (observed_by_technician(faults_only(written)), observed_by_technician(faults_only(laid))),
    ]
    for region in regions:
        for before, after in views:
            old, new = (infer_belief(compile_model(pack, region), {}).faults for pack in (before, after))
            yield from ((fault, region.id) for fault in dangers if new[fault] < old[fault] * (1.0 - ROUNDING))
