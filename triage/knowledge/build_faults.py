"""Faults with their effects, and the pairs of faults that come together."""

import re
from collections.abc import Iterable, Mapping

from triage.engine.enums import FaultKind, InterimUse, PerformedBy, PriceClass
from triage.engine.frequency import FREQUENCIES, distribution, in_order
from triage.engine.pack import Band, Condition, Effect, Fault, FaultPair, Variant
from triage.knowledge.build_conditions import read_frequencies
from triage.knowledge.entry import Entry, entries
from triage.knowledge.problems import PackProblem
from triage.knowledge.yaml_reader import LocatedDict

MINUTES = re.compile(r"[0-9]{1,4}(-[0-9]{1,4})?")


def build_faults(
    file: str,
    fields: LocatedDict,
    conditions: Mapping[str, Condition],
    variants: Mapping[str, Variant],
    rate_multipliers: Mapping[str, Mapping[str, Mapping[str, float]]],
    problems: list[PackProblem],
) -> dict[str, Fault]:
    """Every fault of the file."""
    options = {variant.id: variant.options for variant in variants.values()}
    faults = {}
    for name, entry in entries(file, fields, problems):
        minutes, price = _job(entry)
        faults[name] = Fault(
            id=name,
            kind=entry.member("kind", FaultKind),
            family=entry.text("family"),
            band=entry.member("band", Band),
            calls_per_1000=entry.number("calls_per_1000", 0.01, 1000),
            online_ratio=entry.number("online_ratio", 0.1, 20, 1.0),
            performed_by=entry.member("performed_by", PerformedBy),
            interim_use=entry.member("interim_use", InterimUse),
            requires_variant=entry.gate("requires_variant", options),
            rate_multipliers=rate_multipliers.get(name, {}),
            effects=(*_special(entry, conditions, variants), *_effects(entry, conditions, None)),
            noise_share=entry.number("noise_share", 0.0, 0.5, 0.0),
            repair_minutes=minutes,
            price_class=price,
        )
        entry.close()
    return faults


def _job(entry: Entry) -> tuple[str, PriceClass]:
    """How long a repair takes and its price class."""
    job = entry.below("job")
    if job is None:
        return "0", PriceClass.P0
    minutes = job.fields.get("minutes", "")
    job.used.add("minutes")
    if isinstance(minutes, bool) or not MINUTES.fullmatch(str(minutes)):
        what = f"must be minutes, not {minutes!r}." if job.has("minutes") else "`minutes` is missing."
        job.report("minutes", what, "Write 30, or 30-60.")
    price = job.member("price_class", PriceClass)
    job.close()
    return str(minutes), price


def _effects(entry: Entry, conditions: Mapping[str, Condition], when: frozenset[str] | None) -> list[Effect]:
    named = entry.names("effects") if when is None else ((n, entry) for n in entry.fields if n != "when")
    effects = []
    for name, below in named:
        if below.is_known(name, name, list(conditions)):
            condition = conditions[name]
            frequencies = in_order(read_frequencies(below, name, condition.levels), condition.levels)
            effects.append(Effect(name, distribution(frequencies, condition.floor), when, frequencies))
    return effects


def _special(entry: Entry, conditions: Mapping[str, Condition], variants: Mapping[str, Variant]) -> list[Effect]:
    """Effects that hold on some variant options only; that variant must be the condition's `parent`."""
    effects: list[Effect] = []
    for item in entry.items("effects_when", required=False):
        gates = item.gate("when", {variant.id: variant.options for variant in variants.values()})
        if len(gates) != 1:
            item.report("when", "must name exactly one variant.", "Write when: {variant: [option]}.")
            continue
        ((variant, when),) = gates.items()
        found = _effects(item, conditions, when)
        for effect in found:
            if conditions[effect.condition].parent != variant:
                item.report(
                    effect.condition,
                    f"does not depend on {variant}.",
                    f"The parent of the condition is {conditions[effect.condition].parent}.",
                )
        effects += found
    return effects


def read_rate_multipliers(
    entry: Entry, faults: Iterable[str], variants: Mapping[str, Variant]
) -> dict[str, dict[str, dict[str, float]]]:
    """Fault to variant to option to the factor on its rate."""
    multipliers: dict[str, dict[str, dict[str, float]]] = {}
    for item in entry.items("rate_multipliers", required=False):
        fault = item.choice("fault", faults)
        times = item.number("times", 0.01, 100)
        for variant, below in item.names("when", required=True):
            if below.is_known(variant, variant, list(variants)):
                option = below.choice(variant, variants[variant].options)
                multipliers.setdefault(fault, {}).setdefault(variant, {})[option] = times
        item.close()
    return multipliers


def build_pairs(entry: Entry, faults: Mapping[str, Fault]) -> tuple[FaultPair, ...]:
    """Known chains, and slow companions beside the common faults; none that exclude each other by variant."""
    share = entry.number("chain_share", 0, 1, 0.3)
    pairs: dict[frozenset[str], FaultPair] = {}
    for item in entry.items("chains", required=False):
        chain = _chain(item, faults, share)
        if chain is not None:
            pairs[frozenset({chain.cause, chain.effect})] = chain
    floor = entry.number("companion_min_calls", 0, 1000, 18)
    for companion in entry.ids("companions", faults, ()):
        for fault in faults.values():
            together = frozenset({companion, fault.id})
            common = fault.kind == "fault" and fault.calls_per_1000 >= floor and len(together) == 2
            if common and together not in pairs and can_coexist(faults[companion], fault):
                rate = faults[companion].calls_per_1000 * fault.calls_per_1000 / 1000
                pairs[together] = FaultPair(fault.id, companion, rate)
    return tuple(pairs.values())


def _chain(item: Entry, faults: Mapping[str, Fault], share: float) -> FaultPair | None:
    cause, effect = item.choice("cause", faults), item.choice("effect", faults)
    word = item.choice("frequency", FREQUENCIES)
    item.close()
    if (item.fields.get("cause"), item.fields.get("effect")) != (cause, effect):
        return None
    if cause == effect:
        item.report("effect", "is the cause itself.", "Name another fault.")
        return None
    if not can_coexist(faults[cause], faults[effect]):
        item.report("effect", f"never stands beside {cause}.", "Their variants exclude each other.")
        return None
    return FaultPair(
        cause,
        effect,
        faults[cause].calls_per_1000 * faults[cause].online_ratio * FREQUENCIES[word] * share,
        causal=True,
    )


def can_coexist(a: Fault, b: Fault) -> bool:
    """Whether one oven can have both: no variant rules one of them out where the other occurs."""
    return all(a.requires_variant[v] & b.requires_variant[v] for v in set(a.requires_variant) & set(b.requires_variant))
