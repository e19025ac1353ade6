"""What the form of a reading is given to show, and what comes of it. Texts are finished."""

from dataclasses import dataclass
from typing import Literal

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.view_models import Choice

Tool = Literal["", "meter", "thermometer", "run-on", "preheat"]
"""What counts or keeps the time on the phone beside the form."""


@dataclass(frozen=True)
class ReadingField:
    """One thing to type, in its `unit`; `mode` is the keyboard a phone shows. Where there are `choices` one of them is
    picked; a `tick` is a box that holds `value` where it is ticked."""

    name: str
    label: str
    value: str
    hint: str = ""
    unit: str = ""
    mode: Literal["decimal", "numeric", "text"] = "decimal"
    problem: str = ""
    choices: tuple[tuple[str, str], ...] = ()
    tick: bool = False


@dataclass(frozen=True)
class FieldGroup:
    """Fields that belong together; one with a `summary` is folded until it is `open`. With `columns` the fields stand
    in rows under these names, as many to a row as there are names."""

    fields: list[ReadingField]
    heading: str = ""
    summary: str = ""
    open: bool = True
    tool: Tool = ""
    columns: tuple[str, ...] = ()


@dataclass(frozen=True)
class DoorPlace:
    """One place round the door to tick where the seal lets something through."""

    name: str
    label: str
    ticked: bool


@dataclass(frozen=True)
class ReadingResult:
    """The value with what it may be out by, what it means, its picture, and the bar that takes it into the check.

    `alarm` where the figures raise a red flag: then nothing of this is shown and the check is opened with them.
    """

    headline: str
    lines: list[str]
    drawing: Drawing
    use: Choice | None
    alarm: bool = False


@dataclass(frozen=True)
class ReadingForm:
    """The form of a reading. `wanting` says what is still missing once the form was sent."""

    kind: str
    heading: str
    intro: str
    action: str
    kept: list[tuple[str, str]]
    groups: list[FieldGroup]
    places: list[DoorPlace]
    wanting: list[str]
    result: ReadingResult | None
