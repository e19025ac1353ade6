"""What a hand-over form asks, field by field: with what was typed before, and with what is wrong with it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from django.utils.translation import gettext as _

from triage.check_pages.hand_over_form import DAYS, PARTS, Sent
from triage.jobsheet.booking import MAX_LENGTHS

# Name, label, kind, what the browser may fill in, and a hint.
Words = tuple[str, str, str, str, str]


@dataclass(frozen=True)
class Field:
    """One thing to type. `kind` is that of the keyboard wanted, or `lines` for several lines; `fill` what the browser
    may fill in by itself."""

    name: str
    label: str
    value: str
    problem: str
    kind: str = "text"
    fill: str = "off"
    hint: str = ""
    longest: int = 0


@dataclass(frozen=True)
class PartOfDay:
    value: str
    words: str
    chosen: bool


@dataclass(frozen=True)
class Day:
    name: str
    part_name: str
    number: int
    value: str
    parts: list[PartOfDay]


@dataclass(frozen=True)
class Wrong:
    """A problem in the list above the form; `href` leads to its field where it has one."""

    sentence: str
    href: str


def fields(words: Iterable[Words], sent: Sent, told: Mapping[str, str]) -> list[Field]:
    """`told` holds what is wrong, by the field's name."""
    return [
        Field(name, label, sent.typed.get(name, ""), told.get(name, ""), kind, fill, hint, MAX_LENGTHS[name])
        for name, label, kind, fill, hint in words
    ]


def days(sent: Sent) -> list[Day]:
    words = {
        "any": _("8:00 to 18:00"),
        "morning": _("8:00 to 12:00"),
        "afternoon": _("12:00 to 17:00"),
        "evening": _("17:00 to 20:00"),
    }
    found = []
    for number in range(1, DAYS + 1):
        chosen = sent.typed.get(f"part-{number}", "any")
        parts = [PartOfDay(part, words[part], part == chosen) for part in PARTS]
        found.append(Day(f"day-{number}", f"part-{number}", number, sent.typed.get(f"day-{number}", ""), parts))
    return found
