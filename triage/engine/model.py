"""A pack seen from one region, compiled for reasoning: hypotheses, their prior, and a table per condition.

For one hypothesis the variants are independent of each other and a condition depends on at most one of them, so the
belief of every hypothesis is a product of small sums (`belief.py`) and is exact.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate
from math import log2, prod
from operator import mul, truediv

from triage.engine.errors import PackError
from triage.engine.pack import OPENING, Band, Condition, Fault, Observation, Pack, Region, Variant

Row = tuple[float, ...]
MIN_SHARE = 1e-6


@dataclass(frozen=True, slots=True)
class Hypothesis:
    """One fault, or two at once (the first is the one the job is named after)."""

    faults: tuple[str, ...]
    family: str
    band: Band


@dataclass(frozen=True, slots=True, eq=False)
class ProbabilityTable:
    """P(value | hypothesis), each distinct distribution kept once: that of hypothesis h is `distinct[index[h]]`.

    Most faults leave most conditions as they are in a sound oven, so a table over 150 hypotheses has a handful of
    rows; everything is worked out per row and spread afterwards.
    `doubts` (entropy of each row in bits) and `columns` (the rows turned) are for choosing the next question.
    """

    distinct: tuple[Row, ...]
    index: tuple[int, ...]
    entropies: Row = ()
    transposed: tuple[Row, ...] = ()

    def expand(self, values: Sequence[float]) -> list[float]:
        """One value per distinct row to one value per hypothesis."""
        return [values[i] for i in self.index]


@lru_cache(maxsize=4096)
def expected_likelihood(table: ProbabilityTable, likelihood: Row) -> Row:
    """Per hypothesis: the sum over values of their chance times `likelihood`. Kept, as most answers come often."""
    return tuple(table.expand([sum(map(mul, row, likelihood)) for row in table.distinct]))


@dataclass(frozen=True, slots=True, eq=False)
class Model:
    """Tables over all hypotheses, in one fixed order.

    `rate[h]` calls before any variant is considered; `kinds[variant][option][h]` share of ovens times what the
    hypothesis needs; `levels[condition][option of given, or 0]` is P(level | hypothesis, option);
    `answers[observation][option of given, or 0]` P(answer | hypothesis, option) before other evidence, with the
    same `index` as the condition's table. `harmless[observation]` is P(no answer that ends the check | level) for
    the observations whose signs the danger page lists; those with one answer left are `settled_by_screen`.
    `questions` are what may be asked at all; `reach` is the sum of `kinds` over options and `shares` their quotient,
    P(option | hypothesis); `prior` the chances before any answer, not normalised.
    """

    pack: Pack
    region: Region
    hypotheses: tuple[Hypothesis, ...]
    rates: Row
    variant_weights: Mapping[str, tuple[Row, ...]]
    level_tables: Mapping[str, tuple[ProbabilityTable, ...]]
    answer_tables: Mapping[str, tuple[ProbabilityTable, ...]]
    screened_likelihood: Mapping[str, Row]
    implied_by_screening: frozenset[str]
    questions: tuple[Observation, ...]
    variant_totals: Mapping[str, Row]
    option_probabilities: Mapping[str, tuple[Row, ...]]
    prior: Row


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
    kinds = {v.id: _variant_weights(pack, v, shares[v.id], hypotheses) for v in pack.variants.values()}
    reach = {variant: tuple(map(sum, zip(*rows, strict=True))) for variant, rows in kinds.items()}
    levels = {c.id: _condition_tables(pack, c, hypotheses) for c in pack.conditions.values()}
    reporting = [o for o in pack.observations.values() if o.reports in levels]
    answers = {o.id: tuple(answer_table(o, table) for table in levels[str(o.reports)]) for o in reporting}
    screened = [o for o in reporting if is_screened(pack, o)]
    rate = tuple(rate for _, rate in possible)
    return Model(
        pack=pack,
        region=region,
        hypotheses=tuple(_hypothesis(pack, faults) for faults in hypotheses),
        rates=rate,
        variant_weights=kinds,
        level_tables=levels,
        answer_tables=answers,
        screened_likelihood={o.id: _screened_likelihood(pack, o) for o in screened},
        implied_by_screening=frozenset(o.id for o in screened if len(harmless_options(pack, o)) == 1),
        questions=tuple(o for o in pack.observations.values() if o.reports and not o.task and o.id != OPENING),
        variant_totals=reach,
        option_probabilities={
            v: tuple(tuple(map(truediv, row, reach[v])) for row in rows) for v, rows in kinds.items()
        },
        prior=tuple(map(prod, zip(rate, *reach.values(), strict=True))),
    )


def _variant_weights(
    pack: Pack, variant: Variant, shares: Mapping[str, float], hypotheses: Sequence[tuple[str, ...]]
) -> tuple[Row, ...]:
    return tuple(
        tuple(_rate_multiplier(pack, faults, variant, option) * share for faults in hypotheses)
        for option, share in shares.items()
    )


def entropy(chances: Sequence[float]) -> float:
    """Minus the sum of x*log2(x): bits of doubt when the chances sum to one."""
    return -sum([x * log2(x) for x in chances if x > 0.0])


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


def noisy_max(distributions: Sequence[Row]) -> Row:
    """Noisy-MAX: several causes act independently on ordered levels and the most dominant outcome shows.

    Source: Diez, "Parameter adjustment in Bayes networks: the generalized noisy OR-gate", UAI 1993.
    """
    cumulative = [list(accumulate(distribution)) for distribution in distributions]
    below = [prod(column) for column in zip(*cumulative, strict=True)]
    return tuple(high - low for high, low in zip(below, [0.0, *below[:-1]], strict=True))


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


def _condition_tables(
    pack: Pack, condition: Condition, hypotheses: Sequence[tuple[str, ...]]
) -> tuple[ProbabilityTable, ...]:
    options: Sequence[str | None] = pack.variants[condition.parent].options if condition.parent else [None]
    tables = []
    for option in options:
        places: dict[Row, int] = {}
        index = [places.setdefault(_level_distribution(pack, condition, f, option), len(places)) for f in hypotheses]
        tables.append(ProbabilityTable(tuple(places), tuple(index)))
    return tuple(tables)


def _level_distribution(pack: Pack, condition: Condition, faults: tuple[str, ...], option: str | None) -> Row:
    claims = [levels for f in faults if (levels := _effect_of(pack.faults[f], condition, option)) is not None]
    levels = noisy_max(claims) if claims else condition.baseline
    if option is None or not condition.allowed_on:
        return levels
    possible = [
        value if option in condition.allowed_on.get(level, {option}) else 0.0
        for level, value in zip(condition.levels, levels, strict=True)
    ]
    total = sum(possible)
    return tuple(value / total for value in possible)


def _effect_of(fault: Fault, condition: Condition, option: str | None) -> Row | None:
    if fault.noise_share:
        flat = 1.0 / len(condition.levels)
        return tuple((1.0 - fault.noise_share) * value + fault.noise_share * flat for value in condition.baseline)
    mine = [effect for effect in fault.effects if effect.condition == condition.id]
    special = [effect.levels for effect in mine if effect.when is not None and option in effect.when]
    general = [effect.levels for effect in mine if effect.when is None]
    return next(iter(special + general), None)


@lru_cache(maxsize=4096)
def answer_table(observation: Observation, levels: ProbabilityTable, likelihood: Row | None = None) -> ProbabilityTable:
    """P(answer | hypothesis); `seen` is the likelihood of the levels where answers already speak about them."""
    columns = tuple(zip(*observation.answer_probabilities, strict=True))
    rows = []
    for row in levels.distinct:
        weighed = row if likelihood is None else tuple(map(mul, row, likelihood))
        total = sum(weighed) or 1.0
        rows.append(tuple([sum(map(mul, weighed, column)) / total for column in columns]))
    return ProbabilityTable(tuple(rows), levels.index, tuple(map(entropy, rows)), tuple(zip(*rows, strict=True)))
