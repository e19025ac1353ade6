"""A number as people type it: a comma or a point for the decimals, spaces between thousands, a currency sign.

What can be read two ways is refused rather than guessed: "1,200" is twelve hundred to one and one and a bit to another.
"""

import re
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

Reason = Literal["not-a-number", "two-ways", "too-small", "too-large"]

_NUMBER = re.compile(r"-?[0-9]{1,9}([.,][0-9]{1,6})?")
_TWO_WAYS = re.compile(r"-?[1-9][0-9]{0,2}[.,][0-9]{3}")
_BESIDE = re.compile(r"[\s£€$']")


@dataclass(frozen=True, slots=True)
class ParseFailure:
    """Why a text is not a number that can be used."""

    reason: Reason


def read_number(text: str, low: Decimal, high: Decimal) -> Decimal | ParseFailure:
    """The number meant, from `low` to `high`; `text` is not empty."""
    plain = _BESIDE.sub("", text)
    if not _NUMBER.fullmatch(plain):
        return ParseFailure("not-a-number")
    if _TWO_WAYS.fullmatch(plain):
        return ParseFailure("two-ways")
    value = Decimal(plain.replace(",", "."))
    if value < low:
        return ParseFailure("too-small")
    return value if value <= high else ParseFailure("too-large")
