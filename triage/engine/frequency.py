"""Frequency words and the numbers they stand for.

Authors write words, never probabilities. The numbers are a service trade's judgement, of the same order as the
averages people give such words in surveys (Mosteller and Youtz, "Quantifying Probabilistic Expressions",
Statistical Science 1990; order of size from memory, not seen).
"""

from collections.abc import Iterable, Mapping, Sequence

# One row of a conditional probability table: a number for each value of one variable (the levels of a condition, the
# options of an observation or a variant). Probabilities in it sum to one; likelihoods need not.
Row = tuple[float, ...]

FREQUENCIES: Mapping[str, float] = {
    "almost-always": 0.93,
    "usually": 0.75,
    "often": 0.45,
    "sometimes": 0.20,
    "rarely": 0.05,
    "never": 0.01,
}


def distribution(frequencies: Mapping[str, str], names: Iterable[str], floor: float = FREQUENCIES["never"]) -> Row:
    """Probabilities over `names` in their order, summing to one; a name without a word is `never`."""
    raw = [FREQUENCIES[frequencies[name]] if frequencies.get(name, "never") != "never" else floor for name in names]
    total = sum(raw)
    return tuple(value / total for value in raw)


def mix_with_baseline(rows: Sequence[Row], baseline: Row, trust: float) -> tuple[Row, ...]:
    """P(answer | level) where a share `trust` of people answer as `rows[level]` says and the others as anyone does:

        trust * P(answer | level) + (1 - trust) * sum over levels l of baseline(l) * P(answer | l)

    `baseline` is P(level) in a sound oven; rows are over the answers."""
    anyone = [sum(s * row[i] for s, row in zip(baseline, rows, strict=True)) for i in range(len(rows[0]))]
    return tuple(tuple(trust * p + (1 - trust) * a for p, a in zip(row, anyone, strict=True)) for row in rows)
