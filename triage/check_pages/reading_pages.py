"""What the form of a reading is given to show, and what comes of it."""

from dataclasses import dataclass, field

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.presenters.readings.fields import Mode, Tool
from triage.check_pages.presenters.readings.interpretation import Interpretation


@dataclass(frozen=True)
class FieldError:
    """Why a figure cannot be used: the field's label, what was typed, and the limits of what can be meant."""

    reason: str
    label: str
    typed: str
    low: str
    high: str


@dataclass(frozen=True)
class BoundField:
    """One thing to type, in its `unit`; `mode` is the keyboard a phone shows. Where there are `choices` one of them is
    picked; a `tick` is a box that holds `value` where it is ticked."""

    name: str
    label: str = ""
    value: str = ""
    hint: str = ""
    unit: str = ""
    mode: Mode = "decimal"
    error: FieldError | None = None
    choices: tuple[tuple[str, str], ...] = ()
    tick: bool = False


@dataclass(frozen=True)
class BoundGroup:
    """Fields that belong together; one with a `summary` is folded until it is `open`. With `columns` the fields stand
    in rows under these names, as many to a row as there are names."""

    fields: list[BoundField]
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
    """The value with what it may be out by, which answers it fits, its picture, and the way on into the check;
    `has_range` where the value is given with ±.

    `alarm` where the figures raise a red flag: then nothing of this is shown and the check is opened with them.
    """

    headline: str
    interpretations: list[Interpretation]
    drawing: Drawing
    has_range: bool
    continue_href: str
    alarm: bool = False


@dataclass(frozen=True)
class ReadingForm:
    """The form of a reading, with `hidden` fields. Once it was sent there is a result, or it was `empty`, or there are
    errors, each with the label of its field where that is not part of the sentence."""

    kind: str
    intro: str
    action: str
    hidden: list[tuple[str, str]]
    groups: list[BoundGroup]
    places: list[DoorPlace]
    empty: bool = False
    errors: list[tuple[str, FieldError]] = field(default_factory=list)
    result: ReadingResult | None = None
