"""Frequency words and the numbers they stand for.

Authors write words, never probabilities. The numbers are a service trade's judgement, of the same order as the
averages people give such words in surveys (Mosteller and Youtz, "Quantifying Probabilistic Expressions",
Statistical Science 1990; order of size from memory, not seen).
"""

from collections.abc import Iterable, Mapping

WORDS: Mapping[str, float] = {
    "almost-always": 0.93,
    "usually": 0.75,
    "often": 0.45,
    "sometimes": 0.20,
    "rarely": 0.05,
    "never": 0.01,
}


def spread(words: Mapping[str, str], names: Iterable[str], never: float = WORDS["never"]) -> tuple[float, ...]:
    """Probabilities over `names` in their order, summing to one; a name without a word is `never`."""
    raw = [WORDS[words[name]] if words.get(name, "never") != "never" else never for name in names]
    total = sum(raw)
    return tuple(value / total for value in raw)
