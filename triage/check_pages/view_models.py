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
class Choice:
    """One thing that can be pressed; `hint` is a second, smaller line."""

    label: str
    href: str
    hint: str = ""


@dataclass(frozen=True)
class Caution:
    """One safety message: hazard, consequence, how to avoid it; `sign` is a number among SIGNS."""

    signal: Signal
    hazard: str
    consequence: str
    avoid: str
    sign: str
