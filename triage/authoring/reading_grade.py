"""The Flesch-Kincaid grade of an English text: the school year whose pupils read it with ease.

Kincaid and others, "Derivation of New Readability Formulas", Naval Technical Training Command Report 8-75, 1975:
0.39 * words per sentence + 11.8 * syllables per word - 15.59. Syllables are counted by groups of vowels, with the
silent endings of English taken off; the words of the region stand for themselves.
"""

import re
from dataclasses import dataclass

WORD = re.compile(r"[A-Za-z]+(?:['’][A-Za-z]+)?|\d+")
SENTENCE_END = re.compile(r"(?<![.!?])[.!?]+(?:\s|$)")
VOWELS = re.compile(r"[aeiouy]+")
SILENT_END = re.compile(r"(?<=[^aeiouyl])e$|(?<=[aeiou]l)e$|(?<=[^aeioudt])ed$|(?<=[^aeiouycgszxh])es$")
TWO_VOWELS_APART = re.compile(r"ia(?!l\b|n\b)|io(?!n|us)|iu|eo(?!n\b)|ua(?=l|t)|ying|[^q]ua|uou")


@dataclass(frozen=True, slots=True)
class Counts:
    """What the grade is worked out from."""

    words: int
    sentences: int
    syllables: int

    @property
    def grade(self) -> float:
        return 0.39 * self.words / self.sentences + 11.8 * self.syllables / self.words - 15.59


def count(text: str) -> Counts:
    """Words, sentences and syllables of a text without its braces."""
    plain = re.sub(r"[{}]", "", text).replace("_", " ")
    words = WORD.findall(plain)
    return Counts(
        words=len(words),
        sentences=max(1, len(SENTENCE_END.findall(plain.strip()))),
        syllables=sum(syllables(word) for word in words),
    )


def syllables(word: str) -> int:
    """How many syllables an English word has; never none."""
    plain = re.sub(r"['’](?:s|t|m|re|ve|ll|d)$", "", word.lower())
    if plain.isdigit():
        return len(plain)
    body = SILENT_END.sub("", plain)
    return max(1, len(VOWELS.findall(body)) + len(TWO_VOWELS_APART.findall(body)))


def grade(text: str) -> float:
    """The grade of a text; of one without any word, nothing."""
    counts = count(text)
    return counts.grade if counts.words else 0.0
