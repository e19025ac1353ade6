"""Frequency words and the numbers they stand for.

Authors write words, never probabilities. The numbers are a service trade's judgement, of the same order as the
averages people give such words in surveys (Mosteller and Youtz, "Quantifying Probabilistic Expressions",
Statistical Science 1990; order of size from memory, not seen).
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

# One row of a conditional probability table: a number for each value of one variable (the levels of a condition, the
# options of an observation or a variant). Probabilities in it sum to one; likelihoods need not.
Row = tuple[float, ...]

# A frequency word for each value of one variable: what a row is made of.
Words = tuple[str, ...]

NEVER = "never"
FREQUENCIES: Mapping[str, float] = {
    "almost-always": 0.93,
    "usually": 0.75,
    "often": 0.45,
    "sometimes": 0.20,
    "rarely": 0.05,
    NEVER: 0.01,
}


def in_order(frequencies: Mapping[str, str], names: Iterable[str]) -> Words:
    """The word of each name, in the order of the names; one without a word is `never`."""
    return tuple(frequencies.get(name, NEVER) for name in names)


def distribution(frequencies: Words, floor: float = FREQUENCIES[NEVER]) -> Row:
    """The probabilities that these words stand for, summing to one; `floor` is what `never` stands for."""
    raw = [floor if word == NEVER else FREQUENCIES[word] for word in frequencies]
    total = sum(raw)
    return tuple(value / total for value in raw)


@dataclass(frozen=True, slots=True)
class FrequencyTable:
    """What people answer at each level of a condition, as an author writes it: a frequency word for each answer, and
    how far to trust that people answer so. `floor` is what `never` stands for."""

    rows: tuple[Words, ...]
    trust: float
    floor: float = FREQUENCIES[NEVER]

    def probabilities(self, baseline: Row) -> tuple[Row, ...]:
        """P(answer | level), a row for each level."""
        return mix_with_baseline([distribution(row, self.floor) for row in self.rows], baseline, self.trust)


def mix_with_baseline(rows: Sequence[Row], baseline: Row, trust: float) -> tuple[Row, ...]:
    """P(answer | level) where a share `trust` of people answer as `rows[level]` says and the others as anyone does:

        trust * P(answer | level) + (1 - trust) * sum over levels l of baseline(l) * P(answer | l)

    `baseline` is P(level) in a sound oven; rows are over the answers."""
    anyone = [sum(s * row[i] for s, row in zip(baseline, rows, strict=True)) for i in range(len(rows[0]))]
    return tuple(tuple(trust * p + (1 - trust) * a for p, a in zip(row, anyone, strict=True)) for row in rows)
