"""What pages of several kinds are given to show. What one page alone shows stands beside the presenter that finds it.

Presenters hand over facts (ids, flags, numbers, texts of the pack, complete addresses); the template picks among them
and puts them in words, because the site and the phone share it. What is not there is empty.
"""

from dataclasses import dataclass
from typing import Literal

Signal = str  # DANGER, WARNING, CAUTION or NOTICE; the loader of the texts has seen to it
TaskDone = Literal["", "done", "fixed", "no-change"]

PARTS = (
    "front", "door", "seal", "hinge", "glass", "grill", "top-heat", "bottom-heat", "ring", "fan",
    "cooling-fan", "thermostat", "controls", "clock", "lamp", "plug", "wall-switch", "fuse-box", "meter",
    "vents", "cavity", "terminals", "lock", "smell", "sound", "calendar",
)  # fmt: skip
"""The parts the drawing can mark; the empty string leaves the whole oven quiet."""

ISO_SIGNS = {
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
