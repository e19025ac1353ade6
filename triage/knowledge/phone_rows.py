"""Rows of chances as the words they were made from, one letter a word: "a--d-" for almost-always and sometimes.

A row of chances is seventeen digits a number; the words behind it are one letter, and the phone turns them back with
the same arithmetic (`spread`, `soften`). A row is written in words only where that gives it back to the last digit;
any other row is written in full, so nothing here has to know how a pack was written.
"""

from collections.abc import Iterator, Sequence

from triage.engine.frequency import FREQUENCIES, Row, distribution, mix_with_baseline
from triage.knowledge.build_observations import HARD_SIGN

LETTERS = dict(zip(FREQUENCIES, "abcde-", strict=True))
NEVERS = (FREQUENCIES["never"], HARD_SIGN)
TRUSTS = tuple(percent / 100 for percent in range(100, 29, -1))
NEAR = 1e-6

Short = str | list[float]


def short_row(row: Row, never: float) -> Short:
    """The row as letters, or in full."""
    return next((letters for letters in _worded(row, never) if _spread(letters, never) == row), list(row))


def short_table(says: Sequence[Row], sound: Row) -> list[object] | None:
    """`[trust, never, letters of each level]` of a table of answers, or None where no words give it back."""
    anyone = [sum(s * row[i] for s, row in zip(sound, says, strict=True)) for i in range(len(says[0]))]
    for trust in TRUSTS:
        told = [tuple((p - (1 - trust) * a) / trust for p, a in zip(row, anyone, strict=True)) for row in says]
        for never in NEVERS:
            letters = [next(_worded(row, never), "") for row in told]
            if all(letters) and mix_with_baseline([_spread(row, never) for row in letters], sound, trust) == tuple(
                says
            ):
                return [trust, never, letters]
    return None


def _worded(row: Row, never: float) -> Iterator[str]:
    """Letters whose numbers stand to each other as those of the row do, the likeliest word highest first."""
    numbers = {**FREQUENCIES, "never": never}
    most = max(row)
    for highest in numbers.values():
        letters = [_letter(value * highest / most, numbers) for value in row]
        if all(letters):
            yield "".join(letters)


def _letter(number: float, numbers: dict[str, float]) -> str:
    return next((LETTERS[word] for word, value in numbers.items() if abs(value - number) < NEAR), "")


def _spread(letters: str, never: float) -> Row:
    words = {letter: word for word, letter in LETTERS.items()}
    return distribution(
        {str(place): words[letter] for place, letter in enumerate(letters)}, map(str, range(len(letters))), never
    )
