"""What was typed into a reading's form: each field read by itself, kept as typed, with what is wrong with it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal

from triage.check_pages.form_fields import BoundField, FieldError, InputField, Text
from triage.check_pages.presenters.readings.degrees import Degrees
from triage.check_pages.presenters.readings.fields import FieldGroup, FormTexts, Tool
from triage.check_pages.typed_number import ParseFailure, read_number
from triage.engine.readings.encoding import MAX_ITEMS, Field

READ = "read-"
SENT = READ + "form"  # stands in every form, so that an empty form that was sent is told from one that was not
MIN_ROWS, SPARE_ROWS = 6, 2
MAX_ROWS = MAX_ITEMS + 1  # one more than can be used, so that it is there to be refused
MAX_QUOTED = 20


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


@dataclass
class FormInput:
    """`figures` are the fields that can be used, in the table's units; `errors` what is wrong, by field."""

    raw: Mapping[str, str]
    degrees: Degrees
    figures: dict[str, str] = field(default_factory=dict)
    errors: dict[str, FieldError] = field(default_factory=dict)

    @property
    def is_sent(self) -> bool:
        return SENT in self.raw

    def text(self, name: str) -> str:
        return self.raw.get(READ + name, "").strip()

    def is_ticked(self, name: str) -> bool:
        return self.text(name) == "1"

    def parse(self, texts: FormTexts, limits: Mapping[str, Field]) -> None:
        """Read the fields that stand in the form once; one left empty is simply not there."""
        for one in texts.fields():
            if one.tick:
                if self.is_ticked(one.name):
                    self.figures[one.name] = "1"
            elif one.mode != "text" and self.text(one.name):
                self.parse_field(one, one.name, limits)

    def parse_field(self, one: InputField, name: str, limits: Mapping[str, Field]) -> None:
        """Keep the figure typed under `name`, or what is wrong with it."""
        text, known = self.text(name), limits[one.limits or one.name]
        low, high = (round(self.degrees.to_typed(one.conversion, end), 1) for end in (known.low, known.high))
        value = read_number(text, Decimal(str(low)), Decimal(str(high)))
        if isinstance(value, ParseFailure):
            self.errors[name] = error(value.reason, one.label, text, f"{low:g}", f"{high:.0f}")
        elif known.whole and value % 1:
            self.errors[name] = error("not-whole", one.label)
        else:
            self.figures[name] = f"{self.degrees.to_stored(one.conversion, value):f}"

    def last_row(self, group: FieldGroup) -> int:
        """The number of the last row of a group with anything in it."""
        rows = range(MAX_ROWS, 0, -1)
        return next((n for n in rows if any(self.text(f"{one.name}-{n}") for one in group.fields)), 0)

    def bound(self, one: InputField, params: Mapping[str, object], number: int = 0) -> BoundField:
        """The field for the page, with what was typed and what is wrong with it; in a row with its `number`."""
        name = f"{one.name}-{number}" if number else one.name
        return BoundField(
            name=READ + name,
            label=f"{one.label} {number}" if number else str(one.label),
            value=("1" if self.is_ticked(name) else "") if one.tick else self.raw.get(READ + name, ""),
            hint=with_params(one.hint, params),
            unit=self.degrees.unit if one.conversion and not number else one.unit,
            mode=one.mode,
            error=self.errors.get(name),
            tick=one.tick,
        )


def bound_groups(found: FormInput, groups: Sequence[FieldGroup], params: Mapping[str, object]) -> list[BoundGroup]:
    """The groups for the page. Of alternatives the first is open where nothing stands in any."""
    fields = [_bound_fields(found, group, params) for group in groups]
    used = [any(one.value for one in its) for its in fields]
    unused = not any(use for use, group in zip(used, groups, strict=True) if group.alternative)
    first = next((group for group in groups if group.alternative), None) if unused else None
    return [
        BoundGroup(
            fields=its,
            heading=str(group.heading),
            summary=str(group.summary),
            open=use or group is first,
            tool=group.tool,
            columns=tuple(with_params(column, params) for column in group.columns),
        )
        for group, its, use in zip(groups, fields, used, strict=True)
    ]


def _bound_fields(found: FormInput, group: FieldGroup, params: Mapping[str, object]) -> list[BoundField]:
    """The fields of a group; in rows there are some to spare while there may be more."""
    if not group.columns:
        return [found.bound(one, params) for one in group.fields]
    last = found.last_row(group)
    count = max(MIN_ROWS, last, min(last + SPARE_ROWS, MAX_ITEMS))
    return [found.bound(one, params, number) for number in range(1, count + 1) for one in group.fields]


def error(reason: str, label: Text = "", typed: str = "", low: str = "", high: str = "") -> FieldError:
    return FieldError(reason, str(label), typed[:MAX_QUOTED], low, high)


def with_params(text: Text, params: Mapping[str, object]) -> str:
    return str(text) % params if "%(" in str(text) else str(text)
