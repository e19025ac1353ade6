"""The fields of a form of figures: as they are declared, and as a page shows them with what was typed."""

from dataclasses import dataclass
from typing import Literal

from django.utils.functional import Promise

Text = str | Promise
Mode = Literal["decimal", "numeric", "text"]
"""The keyboard that a phone shows."""
Conversion = Literal["", "temperature", "difference"]
"""What is typed in the degrees of the region and kept in Celsius or kelvin."""


@dataclass(frozen=True)
class InputField:
    """One figure to type, or a box to tick. `limits` names its limits in the reading's table where they are another
    field's."""

    name: str
    label: Text
    hint: Text = ""
    unit: str = ""
    mode: Mode = "decimal"
    conversion: Conversion = ""
    tick: bool = False
    limits: str = ""


@dataclass(frozen=True)
class FieldError:
    """Why a figure cannot be used: the field's label, what was typed, and the limits of what can be meant."""

    reason: str
    label: str = ""
    typed: str = ""
    low: str = ""
    high: str = ""


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
