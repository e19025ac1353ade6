"""The posterior probability of every hypothesis given a set of answers. Exact; the order of the answers cannot matter.

Bayes' rule, with the conditions c between hypotheses h and answers summed out:

    P(h | answers)  is proportional to  P(h) * product over c of  sum over levels l of  P(l | h) * likelihood_c(l)
    likelihood_c(l) = product over the answers a about c of  P(a | l)

Answers about one condition meet in one likelihood over its levels, so a fact that is told in five ways counts once.
Where a condition has a variant as its parent, the sum also runs over the variant's options, each with P(option | h).
An answer of "can't tell" is no evidence at all; a measurement is a likelihood over the options, which is Pearl's
virtual evidence (`readings/evidence.py`).
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from operator import mul, truediv

from triage.engine.frequency import Row
from triage.engine.model import Model
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN, Pack
from triage.engine.readings.evidence import level_likelihood
from triage.engine.tables import PerHypothesis, expected_likelihood, greatest_first


@dataclass(frozen=True, eq=False)
class Belief:
    """`probabilities[h]` the posterior, summing to one. `likelihoods[condition]` over its levels, where an answer was
    about it. `variant_weights[variant][option][h]` the joint weight of hypothesis and option, where anything is known
    about the variant."""

    model: Model
    probabilities: PerHypothesis
    likelihoods: Mapping[str, Row]
    variant_weights: Mapping[str, tuple[PerHypothesis, ...]]

    @cached_property
    def faults(self) -> Mapping[str, float]:
        """The probability that each fault is present, alone or with another, in the pack's order."""
        totals = dict.fromkeys(self.model.pack.faults, 0.0)
        for hypothesis, probability in zip(self.model.hypotheses, self.probabilities, strict=True):
            for fault in hypothesis.faults:
                totals[fault] += probability
        return totals

    @cached_property
    def families(self) -> Mapping[str, float]:
        """The probability of each family, most likely first; a pair counts for the fault its job is named after."""
        totals: dict[str, float] = {}
        for hypothesis, probability in zip(self.model.hypotheses, self.probabilities, strict=True):
            totals[hypothesis.family] = totals.get(hypothesis.family, 0.0) + probability
        return {family: totals[family] for family in greatest_first(totals)}

    @cached_property
    def ranking(self) -> tuple[str, ...]:
        """Fault ids, most likely first; ties keep the pack's order."""
        return tuple(greatest_first(self.faults))


def infer_belief(model: Model, answers: Mapping[str, str]) -> Belief:
    """The belief after `answers` (observation to option), which must already fit together (see `answers.py`)."""
    pack = model.pack
    likelihoods = _likelihoods(model, answers)
    variant_weights = _variant_weights(model, answers, likelihoods)
    weights: Sequence[float] = model.prior
    for condition, likelihood in likelihoods.items():
        if pack.conditions[condition].parent is None:
            weights = list(map(mul, weights, expected_likelihood(model.level_tables[condition][0], likelihood)))
    for variant, rows in variant_weights.items():
        known = map(truediv, map(sum, zip(*rows, strict=True)), model.variant_totals[variant])
        weights = list(map(mul, weights, known))
    total = sum(weights)
    return Belief(model, tuple(weight / total for weight in weights), likelihoods, variant_weights)


def _likelihoods(model: Model, answers: Mapping[str, str]) -> dict[str, Row]:
    """The likelihood over each reported condition's levels; danger signs not ticked count as "not this"."""
    pack = model.pack
    answered = [(pack.observations[o], a) for o, a in answers.items() if a != CANT_TELL and o in model.answer_tables]
    found = [(str(o.reports), level_likelihood(o, answer)) for o, answer in answered]
    if answers.get(SCREEN) == NONE_OF_THESE:
        found += [
            (str(pack.observations[o].reports), row)
            for o, row in model.screened_likelihood.items()
            if answers.get(o, CANT_TELL) == CANT_TELL
        ]
    likelihoods: dict[str, Row] = {}
    for condition, row in sorted(found):
        likelihoods[condition] = tuple(map(mul, likelihoods[condition], row)) if condition in likelihoods else row
    return likelihoods


def _variant_weights(
    model: Model, answers: Mapping[str, str], likelihoods: Mapping[str, Row]
) -> dict[str, tuple[PerHypothesis, ...]]:
    """Joint weight of hypothesis and option for each variant that an answer, a requirement or a condition is about."""
    pack = model.pack
    options = _allowed_options(pack, answers)
    weights: dict[str, tuple[PerHypothesis, ...]] = {}
    for variant in pack.variants.values():
        dependent = [c for c in likelihoods if pack.conditions[c].parent == variant.id]
        if variant.id not in options and not dependent:
            continue
        rows = []
        for index, option in enumerate(variant.options):
            row: list[float] = list(model.variant_weights[variant.id][index])
            if option not in options.get(variant.id, variant.options):
                row = [0.0] * len(row)
            for condition in dependent:
                table = model.level_tables[condition][index]
                row = list(map(mul, row, expected_likelihood(table, likelihoods[condition])))
            rows.append(tuple(row))
        weights[variant.id] = tuple(rows)
    return weights


def _allowed_options(pack: Pack, answers: Mapping[str, str]) -> dict[str, set[str]]:
    """The options each variant may still have; what was said of the variant itself outranks what a question needs."""
    options: dict[str, set[str]] = {}
    known = [o for o in pack.observations.values() if answers.get(o.id, CANT_TELL) != CANT_TELL]
    for observation in known:
        if observation.reports and observation.reports in pack.variants:
            options[observation.reports] = {answers[observation.id]}
    for observation in known:
        for variant, allowed in observation.requires_variant.items():
            narrowed = options.get(variant, set(pack.variants[variant].options)) & allowed
            options[variant] = narrowed or options[variant]
    return options
