"""What was typed into a reading's form: each field read by itself, kept as typed, with what is wrong with it."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from triage.check_pages.presenters.readings.reasons import reason_sentence
from triage.check_pages.reading_pages import ReadingField
from triage.check_pages.typed_number import Unread, read_number
from triage.engine.readings.written import Field

READ = "read-"
SENT = READ + "form"  # stands in every form, so that an empty form that was sent is told from one that was not


@dataclass(frozen=True)
class Blank:
    """One field to fill: its name in the reading's table, its words, and where it is typed in another unit than it is
    kept in, how to turn it into that one and back."""

    name: str
    label: str
    hint: str = ""
    unit: str = ""
    mode: Literal["decimal", "numeric", "text"] = "decimal"
    kept_as: Callable[[Decimal], Decimal] = lambda value: value
    shown_as: Callable[[float], float] = lambda value: value


@dataclass
class Typed:
    """`figures` are the fields that can be used, in the table's units; `problems` the sentences by field."""

    raw: Mapping[str, str]
    figures: dict[str, str] = field(default_factory=dict)
    problems: dict[str, str] = field(default_factory=dict)

    @property
    def sent(self) -> bool:
        return SENT in self.raw

    def text(self, name: str) -> str:
        return self.raw.get(READ + name, "").strip()

    def ticked(self, name: str) -> bool:
        return self.text(name) == "1"

    def read(self, blanks: Iterable[Blank], table: Mapping[str, Field]) -> None:
        """Read these fields; one left empty is simply not there."""
        for blank in blanks:
            if text := self.text(blank.name):
                self.put(blank, blank.name, text, table[blank.name])

    def put(self, blank: Blank, name: str, text: str, limits: Field) -> None:
        """Keep the figure in `text` under `name`, or say what is wrong with it."""
        low, high = (round(blank.shown_as(end), 1) for end in (limits.low, limits.high))
        value = read_number(text, Decimal(str(low)), Decimal(str(high)))
        reason: str = value.reason if isinstance(value, Unread) else ""
        if isinstance(value, Decimal) and limits.whole and value % 1:
            reason = "not-whole"
        if isinstance(value, Decimal) and not reason:
            self.figures[name] = f"{blank.kept_as(value):f}"
            return
        words = {"typed": text[:20], "low": f"{low:g}", "high": f"{high:.0f}", "label": blank.label}
        self.problems[name] = reason_sentence(reason, words)

    def field_of(self, blank: Blank, name: str = "") -> ReadingField:
        """The field for the page, with what was typed and what is wrong with it."""
        name = name or blank.name
        return ReadingField(
            name=READ + name,
            label=blank.label,
            value=self.raw.get(READ + name, ""),
            hint=blank.hint,
            unit=blank.unit,
            mode=blank.mode,
            problem=self.problems.get(name, ""),
        )

    def tick(self, name: str, label: str, hint: str = "") -> ReadingField:
        return ReadingField(READ + name, label, "1" if self.ticked(name) else "", hint, tick=True)
