"""A pack seen from one region, compiled for reasoning: hypotheses, their prior, and a table per condition.

A Bayesian network of three layers: hypothesis and variants at the top, hidden conditions below, answers at the bottom.
Given the hypothesis h the variants are independent of each other, and a condition has at most one of them as a parent,
so every sum over the network is a product of small sums (`belief.py`) and exact. Before any answer,

    P(h)  is proportional to  rate(h) * product over variants v of  sum over options o of  share(o) * multiplier(h, o)
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import prod
from operator import truediv

from triage.engine.errors import PackError
from triage.engine.frequency import Row
from triage.engine.pack import OPENING, Band, Observation, Pack, Region, Variant
from triage.engine.tables import PerHypothesis, ProbabilityTable, answer_table, condition_tables

# The share of an option that a region says nobody there has: rare, not impossible (author's judgement).
MIN_SHARE = 1e-6


@dataclass(frozen=True, slots=True)
class Hypothesis:
    """One fault, or two at once (the first is the one the job is named after)."""

    faults: tuple[str, ...]
    family: str
    band: Band


@dataclass(frozen=True, slots=True, eq=False)
class Model:
    """Tables over all hypotheses, in one fixed order; h stands for a hypothesis.

    `rates[h]` per 1000 calls, before any variant is considered.
    `variant_weights[variant][option][h]` the option's share of ovens times how much oftener h occurs there (zero where
    it cannot); `variant_totals[variant][h]` their sum over options; `option_probabilities[variant][option][h]` their
    quotient, P(option | h). `prior[h]` the product of rate and totals, not normalised.
    `level_tables[condition][option of its parent, or 0]` P(level | h, option).
    `answer_tables[observation][option of the condition's parent, or 0]` P(answer | h, option) before other evidence,
    with the same `index` as the condition's table.
    `questions` the observations that may be asked at all, in the pack's order.
    `screened_likelihood[observation]` P(no answer that ends the check | level), for the observations whose signs the
    danger page lists; `implied_by_screening` those of them that "none of these" leaves one answer.
    """

    pack: Pack
    region: Region
    hypotheses: tuple[Hypothesis, ...]
    rates: PerHypothesis
    variant_weights: Mapping[str, tuple[PerHypothesis, ...]]
    level_tables: Mapping[str, tuple[ProbabilityTable, ...]]
    answer_tables: Mapping[str, tuple[ProbabilityTable, ...]]
    screened_likelihood: Mapping[str, Row]
    implied_by_screening: frozenset[str]
    questions: tuple[Observation, ...]
    variant_totals: Mapping[str, PerHypothesis]
    option_probabilities: Mapping[str, tuple[PerHypothesis, ...]]
    prior: PerHypothesis


@lru_cache(maxsize=128)
def compile_model(pack: Pack, region: Region) -> Model:
    """The model of `pack` in `region`; raises PackError when no hypothesis is possible there."""
    shares = {variant.id: _shares(variant, region) for variant in pack.variants.values()}
    possible = [
        (faults, rate)
        for faults, rate in _combinations(pack)
        if all(
            any(_rate_multiplier(pack, faults, variant, o) * s for o, s in shares[variant.id].items())
            for variant in pack.variants.values()
        )
    ]
    if not possible:
        raise PackError(f"no fault of {pack.id} can occur in region {region.id}")
    hypotheses = [faults for faults, _ in possible]
    weights = {v.id: _variant_weights(pack, v, shares[v.id], hypotheses) for v in pack.variants.values()}
    totals = {variant: tuple(map(sum, zip(*rows, strict=True))) for variant, rows in weights.items()}
    levels = {c.id: condition_tables(pack, c, hypotheses) for c in pack.conditions.values()}
    reporting = [o for o in pack.observations.values() if o.reports in levels]
    answers = {o.id: tuple(answer_table(o, table) for table in levels[str(o.reports)]) for o in reporting}
    screened = [o for o in reporting if is_screened(pack, o)]
    rates = tuple(rate for _, rate in possible)
    return Model(
        pack=pack,
        region=region,
        hypotheses=tuple(_hypothesis(pack, faults) for faults in hypotheses),
        rates=rates,
        variant_weights=weights,
        level_tables=levels,
        answer_tables=answers,
        screened_likelihood={o.id: _screened_likelihood(pack, o) for o in screened},
        implied_by_screening=frozenset(o.id for o in screened if len(harmless_options(pack, o)) == 1),
        questions=tuple(o for o in pack.observations.values() if o.reports and not o.task and o.id != OPENING),
        variant_totals=totals,
        option_probabilities={
            v: tuple(tuple(map(truediv, row, totals[v])) for row in rows) for v, rows in weights.items()
        },
        prior=tuple(map(prod, zip(rates, *totals.values(), strict=True))),
    )


def _variant_weights(
    pack: Pack, variant: Variant, shares: Mapping[str, float], hypotheses: Sequence[tuple[str, ...]]
) -> tuple[PerHypothesis, ...]:
    return tuple(
        tuple(_rate_multiplier(pack, faults, variant, option) * share for faults in hypotheses)
        for option, share in shares.items()
    )


def _screened_likelihood(pack: Pack, observation: Observation) -> Row:
    places = [observation.options.index(option) for option in harmless_options(pack, observation)]
    return tuple(sum(row[place] for place in places) for row in observation.answer_probabilities)


def is_screened(pack: Pack, observation: Observation) -> bool:
    """Whether the danger page asks after this observation: some of its answers stand there as a sign."""
    return any(sign[0] == observation.id for flag in pack.red_flags.values() for sign in flag.signs)


def harmless_options(pack: Pack, observation: Observation) -> tuple[str, ...]:
    """The answers that do not end the check."""
    flags = {option: pack.red_flags[flag] for option, flag in observation.flags.items()}
    return tuple(o for o in observation.options if o not in flags or not flags[o].level.ends_check)


def _combinations(pack: Pack) -> Iterator[tuple[tuple[str, ...], float]]:
    for fault in pack.faults.values():
        yield (fault.id,), fault.calls_per_1000 * fault.online_ratio
    for pair in pack.fault_pairs:
        yield (pair.cause, pair.effect), pair.rate_per_1000


def _hypothesis(pack: Pack, faults: tuple[str, ...]) -> Hypothesis:
    members = [pack.faults[fault] for fault in faults]
    return Hypothesis(faults, members[0].family, max((m.band for m in members), key=lambda band: band.severity))


def _shares(variant: Variant, region: Region) -> dict[str, float]:
    """Share of each option in the region, in the pack's order; one never seen there is rare, not impossible."""
    own = region.shares.get(variant.id) or dict(zip(variant.options, variant.shares, strict=True))
    shares = {option: max(own.get(option, 0.0), MIN_SHARE) for option in variant.options}
    total = sum(shares.values())
    return {option: share / total for option, share in shares.items()}


def _rate_multiplier(pack: Pack, faults: tuple[str, ...], variant: Variant, option: str) -> float:
    """Zero where a fault cannot occur on this option, else how much more often it does."""
    factor = 1.0
    for fault in (pack.faults[fault] for fault in faults):
        if option not in fault.requires_variant.get(variant.id, variant.options):
            return 0.0
        factor *= fault.rate_multipliers.get(variant.id, {}).get(option, 1.0)
    return factor
