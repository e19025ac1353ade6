"""What the call page is given to show. Texts are finished, addresses complete; the empty string is nothing there."""

from dataclasses import dataclass
from typing import Literal

from triage.check_pages.view_models import Choice, Number, Signal

Kind = Literal["open", "caller", "danger", "question", "act", "advice", "exit"]
Moved = Literal["", "up", "down"]


@dataclass(frozen=True)
class Line:
    """A line to read word for word; `href` ticks it as read and is there for the one whose turn it is."""

    text: str
    seconds: int
    read: bool
    href: str


@dataclass(frozen=True)
class Key:
    """One thing a key records; `grave` where it is a danger sign."""

    key: str
    label: str
    href: str
    grave: bool = False


@dataclass(frozen=True)
class Say:
    """What to say now. Nothing can be recorded with `keys` while a line of `lines` was not read."""

    kind: Kind
    heading: str
    text: str
    seconds: int
    again: str
    note: str
    lines: list[Line]
    left_out: list[str]
    keys: list[Key]
    part: str
    count: str


@dataclass(frozen=True)
class Alarm:
    """The band across the page once danger was recorded: the words to say, and the number to give."""

    signal: Signal
    heading: str
    words: str
    call: list[Number]
    stops: bool


@dataclass(frozen=True)
class Told:
    """One answer of the story so far."""

    question: str
    answer: str
    change_href: str
    grave: bool


@dataclass(frozen=True)
class Leaning:
    """A cause as it stands now, and which way the last answer moved it."""

    name: str
    chance: str
    tenths: int
    moved: Moved


@dataclass(frozen=True)
class CallerRow:
    """One thing to know about the caller."""

    about: str
    ask: str
    choices: list[Choice]
    chosen: str


@dataclass(frozen=True)
class CallPage:
    """The whole page of one call at one moment. `good` is the address of what holds, `over` when all was read;
    `hand_over_href` is there once a visit is the next thing. `firm_says` is as the firm wrote it."""

    say: Say
    alarm: Alarm | None
    story: list[Told]
    leanings: list[Leaning]
    would_change: list[Key]
    caller: list[CallerRow]
    problems: list[str]
    summary: str
    over: bool
    good: str
    firm_says: list[tuple[str, str]]
    hand_over_href: str
    earlier_href: str
    undo_href: str
    danger_href: str
    phone_href: str
    qr_href: str
    words_href: str
    call_id: str
