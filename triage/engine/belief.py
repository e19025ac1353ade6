"""The chance of every hypothesis given a set of answers. Exact; the order of the answers cannot matter.

Answers to observations of one condition multiply into one likelihood over that condition's levels, so a fact told
five ways is one fact with five witnesses. An answer of "can't tell" is no evidence at all; a reading is a likelihood
over the options (`readings/evidence.py`).
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from operator import mul, truediv

from triage.engine.model import Model, Row, expected_likelihood
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN, Pack
from triage.engine.readings.evidence import level_likelihood

RANKED_DIGITS = 9


@dataclass(frozen=True, eq=False)
class Belief:
    """`chances[h]` sums to one. `seen[condition]` is the likelihood of its levels, `kinds[variant][option][h]` the
    joint weight of hypothesis and option where anything is known about that variant."""

    model: Model
    probabilities: Row
    likelihoods: Mapping[str, Row]
    variant_weights: Mapping[str, tuple[Row, ...]]

    @cached_property
    def faults(self) -> Mapping[str, float]:
        """The chance that each fault is present, alone or with another, in the pack's order."""
        totals = dict.fromkeys(self.model.pack.faults, 0.0)
        for hypothesis, chance in zip(self.model.hypotheses, self.probabilities, strict=True):
            for fault in hypothesis.faults:
                totals[fault] += chance
        return totals

    @cached_property
    def families(self) -> Mapping[str, float]:
        """The chance of each family, most likely first; a pair counts for the fault its job is named after."""
        totals: dict[str, float] = {}
        for hypothesis, chance in zip(self.model.hypotheses, self.probabilities, strict=True):
            totals[hypothesis.family] = totals.get(hypothesis.family, 0.0) + chance
        return {family: totals[family] for family in _likeliest_first(totals)}

    @cached_property
    def ranking(self) -> tuple[str, ...]:
        """Fault ids, most likely first; ties keep the pack's order."""
        return tuple(_likeliest_first(self.faults))


def _likeliest_first(probabilities: Mapping[str, float]) -> list[str]:
    """The last digits of exp and log differ from one computer to the next and must not decide a tie."""
    return sorted(probabilities, key=lambda name: -float(f"{probabilities[name]:.{RANKED_DIGITS}g}"))


def infer_belief(model: Model, answers: Mapping[str, str]) -> Belief:
    """The belief after `answers` (observation to option), which must already fit together (see `answers.py`)."""
    pack = model.pack
    seen = _likelihoods(model, answers)
    kinds = _variant_weights(model, answers, seen)
    weights: Sequence[float] = model.prior
    for condition, likelihood in seen.items():
        if pack.conditions[condition].parent is None:
            weights = list(map(mul, weights, expected_likelihood(model.level_tables[condition][0], likelihood)))
    for variant, rows in kinds.items():
        known = map(truediv, map(sum, zip(*rows, strict=True)), model.variant_totals[variant])
        weights = list(map(mul, weights, known))
    total = sum(weights)
    return Belief(model, tuple(weight / total for weight in weights), seen, kinds)


def _likelihoods(model: Model, answers: Mapping[str, str]) -> dict[str, Row]:
    """The likelihood over each reported condition's levels; danger signs not ticked count as "not this"."""
    pack = model.pack
    witnesses = [(pack.observations[o], a) for o, a in answers.items() if a != CANT_TELL and o in model.answer_tables]
    found = [(str(o.reports), level_likelihood(o, answer)) for o, answer in witnesses]
    if answers.get(SCREEN) == NONE_OF_THESE:
        found += [
            (str(pack.observations[o].reports), row)
            for o, row in model.screened_likelihood.items()
            if answers.get(o, CANT_TELL) == CANT_TELL
        ]
    seen: dict[str, Row] = {}
    for condition, witness in sorted(found):
        seen[condition] = tuple(map(mul, seen[condition], witness)) if condition in seen else witness
    return seen


def _variant_weights(model: Model, answers: Mapping[str, str], seen: Mapping[str, Row]) -> dict[str, tuple[Row, ...]]:
    """Joint weight of hypothesis and option for each variant that an answer, a gate or a condition speaks about."""
    pack = model.pack
    told = _allowed_options(pack, answers)
    kinds: dict[str, tuple[Row, ...]] = {}
    for variant in pack.variants.values():
        dependent = [c for c in seen if pack.conditions[c].parent == variant.id]
        if variant.id not in told and not dependent:
            continue
        rows = []
        for index, option in enumerate(variant.options):
            row: list[float] = list(model.variant_weights[variant.id][index])
            if option not in told.get(variant.id, variant.options):
                row = [0.0] * len(row)
            for condition in dependent:
                row = list(map(mul, row, expected_likelihood(model.level_tables[condition][index], seen[condition])))
            rows.append(tuple(row))
        kinds[variant.id] = tuple(rows)
    return kinds


def _allowed_options(pack: Pack, answers: Mapping[str, str]) -> dict[str, set[str]]:
    """The options each variant may still have; what was said of the variant itself outranks a gate."""
    told: dict[str, set[str]] = {}
    known = [o for o in pack.observations.values() if answers.get(o.id, CANT_TELL) != CANT_TELL]
    for observation in known:
        if observation.reports and observation.reports in pack.variants:
            told[observation.reports] = {answers[observation.id]}
    for observation in known:
        for variant, allowed in observation.requires_variant.items():
            narrowed = told.get(variant, set(pack.variants[variant].options)) & allowed
            told[variant] = narrowed or told[variant]
    return told
