"""What each page of a check is given to show, and nothing more.

Presenters build these from the engine's results; templates receive one of them as `page`. Every text is
finished and every address is complete, so a template decides nothing and computes nothing.
An optional text or address that is not there is the empty string.
"""

from dataclasses import dataclass
from typing import Literal

Band = Literal["make-safe", "qualified", "self-check", "normal"]
"""The advice level, gravest first."""
GateState = Literal["", "yes", "no", "unsure"]
Signal = str  # DANGER, WARNING, CAUTION or NOTICE; the loader of the texts has seen to it
TaskDone = Literal["", "done", "fixed", "no-change"]

PARTS = (
    "front", "door", "seal", "hinge", "glass", "grill", "top-heat", "bottom-heat", "ring", "fan",
    "cooling-fan", "thermostat", "controls", "clock", "lamp", "plug", "wall-switch", "fuse-box", "meter",
    "vents", "cavity", "terminals", "lock", "smell", "sound", "calendar",
)  # fmt: skip
"""The parts the drawing can mark; the empty string leaves the whole oven quiet."""

SIGNS = {
    "general": "W001",
    "electricity": "W012",
    "hot": "W017",
    "fire": "W021",
    "sharp": "W022",
    "disconnect": "M021",
}
"""The ISO 7010 number of each sign a text may name; these are the signs that are drawn."""


@dataclass(frozen=True)
class Answered:
    """One answer already given, and the address of the trail without it."""

    question: str
    answer: str
    change_href: str


@dataclass(frozen=True)
class Choice:
    """One thing that can be pressed; `hint` is a second, smaller line."""

    label: str
    href: str
    hint: str = ""


@dataclass(frozen=True)
class Number:
    """A telephone number as read, what it is for, and its `tel:` address."""

    number: str
    for_what: str
    href: str


@dataclass(frozen=True)
class Cause:
    """One possible cause; `tenths` of ten ovens that answer alike have it, as `chance_words` also says."""

    name: str
    chance_words: str
    tenths: int
    explanation: str
    points_to: list[str]
    points_away: list[str]
    part: str


@dataclass(frozen=True)
class Instruction:
    """One thing to do; `parts` are its steps where it has any, as cutting the supply does, `notes` what to know."""

    text: str
    parts: list[str]
    notes: list[str]


@dataclass(frozen=True)
class FlagNote:
    """A red flag beside the main matter of a page: what it is, what to do first, what never."""

    signal: Signal
    heading: str
    hazard: str
    first: list[Instruction]
    never: list[str]


@dataclass(frozen=True)
class SwitchingOff:
    """Cutting the supply: what comes `before`, the steps of `cut`, what `never`, what the eye `cannot_tell` and where
    power may `also` come from."""

    before: list[str]
    cut: Instruction
    never: list[str]
    cannot_tell: str
    also: list[str]


@dataclass(frozen=True)
class Caution:
    """One safety message: hazard, consequence, how to avoid it; `sign` is a number among SIGNS."""

    signal: Signal
    hazard: str
    consequence: str
    avoid: str
    sign: str
