"""Tables of probabilities over all hypotheses, and the arithmetic on them.

Two faults act on a condition independently and the more dominant level shows: **noisy-MAX** (Diez, "Parameter
adjustment in Bayes networks: the generalized noisy OR-gate", UAI 1993). With levels in order of dominance and
cumulative distributions,

    P(level <= l | f, g) = P(level <= l | f) * P(level <= l | g)
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate
from math import log2, prod
from operator import mul

from triage.engine.frequency import Row
from triage.engine.pack import Condition, Fault, Observation, Pack

RANKED_DIGITS = 9
# A number for each hypothesis, in the model's order.
PerHypothesis = tuple[float, ...]


@dataclass(frozen=True, slots=True, eq=False)
class ProbabilityTable:
    """P(value | hypothesis) of one variable, each distinct row kept once: that of hypothesis h is `distinct[index[h]]`.

    Most faults leave most conditions as they are in a sound oven, so a table over 150 hypotheses has a handful of
    rows; everything is worked out once a row and expanded afterwards.
    `entropies` (of each row, in bits) and `transposed` (a tuple for each value, of its probability in each row) are
    for choosing the next question, and empty in tables of conditions.
    """

    distinct: tuple[Row, ...]
    index: tuple[int, ...]
    entropies: Row = ()
    transposed: tuple[Row, ...] = ()

    def expand(self, values: Sequence[float]) -> list[float]:
        """One value per distinct row to one value per hypothesis."""
        return [values[i] for i in self.index]


@lru_cache(maxsize=4096)
def expected_likelihood(table: ProbabilityTable, likelihood: Row) -> PerHypothesis:
    """P(evidence | hypothesis) = sum over values v of P(v | hypothesis) * P(evidence | v); `likelihood` is over values.
    Cached, as most answers come often."""
    return tuple(table.expand([sum(map(mul, row, likelihood)) for row in table.distinct]))


def noisy_max(distributions: Sequence[Row]) -> Row:
    """The distribution of the most dominant of several independent causes on ordered levels: noisy-MAX."""
    cumulative = [list(accumulate(distribution)) for distribution in distributions]
    cumulative_product = [prod(column) for column in zip(*cumulative, strict=True)]
    return tuple(high - low for high, low in zip(cumulative_product, [0.0, *cumulative_product[:-1]], strict=True))


def condition_tables(
    pack: Pack, condition: Condition, hypotheses: Sequence[tuple[str, ...]]
) -> tuple[ProbabilityTable, ...]:
    """P(level | hypothesis) for each option of the condition's parent, or one table where it has none; `hypotheses`
    are the faults of each."""
    options: Sequence[str | None] = pack.variants[condition.parent].options if condition.parent else [None]
    tables = []
    for option in options:
        places: dict[Row, int] = {}
        index = [places.setdefault(_level_distribution(pack, condition, f, option), len(places)) for f in hypotheses]
        tables.append(ProbabilityTable(tuple(places), tuple(index)))
    return tuple(tables)


def _level_distribution(pack: Pack, condition: Condition, faults: tuple[str, ...], option: str | None) -> Row:
    effects = [levels for f in faults if (levels := _effect_of(pack.faults[f], condition, option)) is not None]
    levels = noisy_max(effects) if effects else condition.baseline
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
    """P(answer | h, evidence) = sum over levels l of P(answer | l) * P(l | h, evidence), from a table of P(level | h);
    `likelihood` is P(evidence | level) where answers are already about this condition."""
    by_option = tuple(zip(*observation.answer_probabilities, strict=True))
    rows = []
    for row in levels.distinct:
        joint = row if likelihood is None else tuple(map(mul, row, likelihood))
        total = sum(joint) or 1.0
        rows.append(tuple([sum(map(mul, joint, column)) / total for column in by_option]))
    return ProbabilityTable(tuple(rows), levels.index, tuple(map(entropy, rows)), tuple(zip(*rows, strict=True)))


def entropy(probabilities: Sequence[float]) -> float:
    """Minus the sum of x*log2(x): Shannon's entropy in bits where they sum to one."""
    return -sum([x * log2(x) for x in probabilities if x > 0.0])


def greatest_first(values: Mapping[str, float]) -> list[str]:
    """The names, those of the greatest values first; ties keep their order. The last digits of exp and log differ from
    one computer to the next and must not decide a tie."""
    return sorted(values, key=lambda name: -float(f"{values[name]:.{RANKED_DIGITS}g}"))
