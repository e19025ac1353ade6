"""Frequency words and the numbers they stand for.

Authors write words, never probabilities. The numbers are a service trade's judgement, of the same order as the
averages people give such words in surveys (Mosteller and Youtz, "Quantifying Probabilistic Expressions",
Statistical Science 1990; order of size from memory, not seen).
"""

from collections.abc import Iterable, Mapping, Sequence

Row = tuple[float, ...]

FREQUENCIES: Mapping[str, float] = {
    "almost-always": 0.93,
    "usually": 0.75,
    "often": 0.45,
    "sometimes": 0.20,
    "rarely": 0.05,
    "never": 0.01,
}


def distribution(words: Mapping[str, str], names: Iterable[str], floor: float = FREQUENCIES["never"]) -> Row:
    """Probabilities over `names` in their order, summing to one; a name without a word is `never`."""
    raw = [FREQUENCIES[words[name]] if words.get(name, "never") != "never" else floor for name in names]
    total = sum(raw)
    return tuple(value / total for value in raw)


def mix_with_baseline(rows: Sequence[Row], baseline: Row, trust: float) -> tuple[Row, ...]:
    """Per level, the answers `told` of it, mixed with how anyone answers by the share of people not to be trusted;
    `sound` are the chances of the levels in a sound oven."""
    anyone = [sum(s * row[i] for s, row in zip(baseline, rows, strict=True)) for i in range(len(rows[0]))]
    return tuple(tuple(trust * p + (1 - trust) * a for p, a in zip(row, anyone, strict=True)) for row in rows)
