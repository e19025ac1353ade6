"""The frozen texts of a pack in one language. Built by `text_builder`, in a region's terms by `wording.with_terms`.

The shapes are the schema: a field without a default must stand in the file, and nothing else may.
"""

from collections.abc import Mapping
from dataclasses import dataclass

ISO_SIGNS = ("general", "electricity", "hot", "fire", "sharp", "disconnect")


@dataclass(frozen=True, slots=True)
class QuestionText:
    """One question. `say` is read aloud by an agent, `again` a shorter second try, `short` its name in lists."""

    ask: str
    why: str
    look: str
    say: str
    again: str
    short: str
    options: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class FaultText:
    """What a fault is called and what people are told; `trade`, `repairer` and `kit` are for the repairer only."""

    name: str
    trade: str
    part: str
    picture: str
    means: str
    now: str
    job: str
    repairer: str
    why_them: str = ""
    kit: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class FamilyText:
    """A family's name, and what would tell its members apart."""

    name: str
    split: str


@dataclass(frozen=True, slots=True)
class FlagText:
    """A red flag: the sign as a person would say it, what it is, what to do first, what never, what comes next."""

    sign: str
    heading: str
    hazard: str
    first: tuple[str, ...]
    never: tuple[str, ...]
    then: str
    who: str


@dataclass(frozen=True, slots=True)
class CautionText:
    """One safety message in the order of IEC 82079-1: hazard, consequence, avoidance; `sign` is one of ISO_SIGNS."""

    signal: str
    sign: str
    hazard: str
    consequence: str
    avoid: str


@dataclass(frozen=True, slots=True)
class GateText:
    """Something to be sure of before a task, what to do if it is not so, and what the eye cannot tell."""

    ask: str
    if_not: str
    looks_off: str = ""


@dataclass(frozen=True, slots=True)
class TaskText:
    """Something to do at home; `fixed` and `not_fixed` are told once its outcome is known."""

    title: str
    why: str
    cautions: tuple[CautionText, ...]
    tools: tuple[str, ...]
    steps: tuple[str, ...]
    stop_if: tuple[str, ...]
    fixed: str
    not_fixed: str


@dataclass(frozen=True, slots=True)
class SupplyText:
    """How an ordinary person cuts one kind of supply; `looks_off` is what the eye cannot tell."""

    steps: tuple[str, ...]
    never: tuple[str, ...]
    cannot: str
    looks_off: str


@dataclass(frozen=True, slots=True)
class IsolationText:
    """Switching off at the supply: what holds always, by kind of supply, and putting it back on."""

    always: tuple[str, ...]
    supplies: Mapping[str, SupplyText]
    cooling: Mapping[str, str]
    other_sources: tuple[str, ...]
    back_on: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class EntryText:
    """One line of the first page; `search_terms` are what people type for it and never shown."""

    label: str
    search_terms: str


@dataclass(frozen=True, slots=True)
class ExitText:
    """A way out for what the check is not about."""

    label: str
    heading: str
    lines: tuple[str, ...]
    who: str


@dataclass(frozen=True, slots=True)
class DangerText:
    """The danger page around its signs."""

    heading: str
    intro: str
    none: str
    none_note: str


@dataclass(frozen=True, slots=True)
class StartText:
    """The first page; `entries` stand in the order of the pack's complaints."""

    heading: str
    intro: str
    filter_label: str
    filter_hint: str
    none_found: str
    entries: tuple[EntryText, ...]
    exits: Mapping[str, ExitText]
    danger: DangerText


@dataclass(frozen=True, slots=True)
class RoundText:
    """Danger signs asked after in one breath; `signs` are the red flags it names."""

    signs: tuple[str, ...]
    say: str


@dataclass(frozen=True, slots=True)
class CallsText:
    """A call: the danger signs as read aloud, and by question and option what callers say for it."""

    rounds: tuple[RoundText, ...]
    heard: Mapping[str, Mapping[str, str]]


@dataclass(frozen=True, slots=True)
class Texts:
    """Everything a pack says in one language."""

    language: str
    questions: Mapping[str, QuestionText]
    faults: Mapping[str, FaultText]
    families: Mapping[str, FamilyText]
    levels: Mapping[str, Mapping[str, str]]
    flags: Mapping[str, FlagText]
    gates: Mapping[str, GateText]
    tasks: Mapping[str, TaskText]
    isolation: IsolationText
    start: StartText
    calls: CallsText
    parts: Mapping[str, str]
