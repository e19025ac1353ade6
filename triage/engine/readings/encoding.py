"""How a reading is written in a trail: its raw inputs as short ASCII without spaces, so that it can be replayed.

Fields are joined by "~", each one letter and its value; a list is joined by "_" and a pair in it by "-":
`f21~s30~k1000`, `c180~r30-172_35-190`. A decimal comma is read like a point. Every kind has one table of fields; the
same names and limits serve a form. Nothing is worked out here.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

MAX_TEXT_LENGTH = 800  # the most readings of a thermometer, each to a tenth, and what is known of it
MAX_ITEMS = 60

_NUMBER = re.compile(r"-?[0-9]{1,9}(?:[.,][0-9]{1,6})?")
_FIELD = re.compile(r"([a-z])([0-9a-z.,_-]*)")


class InvalidReading(ValueError):
    """A reading that cannot be used: `reason` and the `field` it is about; the words for people live elsewhere.

    Reasons: not-a-reading, unknown-field, twice, missing, not-a-number, too-small, too-large, not-whole, too-many,
    too-few, out-of-order, backwards, one-way.
    """

    def __init__(self, reason: str, field: str = "") -> None:
        super().__init__(f"{reason} {field}".strip())
        self.reason = reason
        self.field = field


@dataclass(frozen=True, slots=True)
class Field:
    """One input: its letter, the limits of what can be meant, and whether it is a whole number."""

    letter: str
    low: float
    high: float
    whole: bool = False


FieldTable = Mapping[str, Field]


def encode(table: FieldTable, typed: Mapping[str, str]) -> str:
    """The text of what was typed; fields left empty are left out. It may still be unreadable: see the kinds."""
    known = {name: "".join(typed.get(name, "").split()) for name in table}
    return "~".join(table[name].letter + value for name, value in known.items() if value)


def decode_fields(table: FieldTable, text: str) -> dict[str, str]:
    """The raw value of each field by name. Raises Unreadable."""
    if not text or len(text) > MAX_TEXT_LENGTH:
        raise InvalidReading("not-a-reading")
    names = {field.letter: name for name, field in table.items()}
    found: dict[str, str] = {}
    for piece in text.split("~"):
        match = _FIELD.fullmatch(piece)
        if match is None:
            raise InvalidReading("not-a-reading")
        name = names.get(match[1])
        if name is None:
            raise InvalidReading("unknown-field")
        if name in found:
            raise InvalidReading("twice", name)
        found[name] = match[2]
    return found


def read_number(table: FieldTable, raw: Mapping[str, str], name: str) -> float:
    """The field's number within its limits."""
    if name not in raw:
        raise InvalidReading("missing", name)
    return _checked_number(table[name], name, raw[name])


def read_optional(table: FieldTable, raw: Mapping[str, str], name: str) -> float | None:
    return read_number(table, raw, name) if name in raw else None


def read_numbers(table: FieldTable, raw: Mapping[str, str], name: str) -> tuple[float, ...]:
    """The field's list of numbers, each above the one before it."""
    found = tuple(_checked_number(table[name], name, item) for item in _read_items(raw, name))
    _refuse_disorder(found, name)
    return found


def read_pairs(table: FieldTable, raw: Mapping[str, str], first: str, second: str) -> tuple[tuple[float, float], ...]:
    """The list under `first` of pairs whose second part keeps the limits of `second`; first parts rise."""
    found = []
    for item in _read_items(raw, first):
        one, dash, other = item.partition("-")
        if not dash:
            raise InvalidReading("not-a-number", first)
        found.append((_checked_number(table[first], first, one), _checked_number(table[second], second, other)))
    _refuse_disorder([one for one, _ in found], first)
    return tuple(found)


def _read_items(raw: Mapping[str, str], name: str) -> list[str]:
    if name not in raw:
        raise InvalidReading("missing", name)
    items = raw[name].split("_")
    if len(items) > MAX_ITEMS:
        raise InvalidReading("too-many", name)
    return items


def _checked_number(field: Field, name: str, item: str) -> float:
    if not _NUMBER.fullmatch(item):
        raise InvalidReading("not-a-number", name)
    value = float(item.replace(",", "."))
    if value < field.low:
        raise InvalidReading("too-small", name)
    if value > field.high:
        raise InvalidReading("too-large", name)
    if field.whole and value != int(value):
        raise InvalidReading("not-whole", name)
    return value


def _refuse_disorder(times: Sequence[float], name: str) -> None:
    """Two readings at one instant, or one before the last, cannot both be right."""
    if any(later <= earlier for earlier, later in pairwise(times)):
        raise InvalidReading("out-of-order", name)
