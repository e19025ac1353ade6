"""What the call page is given to show. Texts are finished, addresses complete; the empty string is nothing there."""

from dataclasses import dataclass
from typing import Literal

from triage.check_pages.presenters.phone_numbers import PhoneNumber
from triage.check_pages.presenters.problems import ProblemNote
from triage.check_pages.view_models import Choice, Signal

PromptKind = Literal["open", "caller", "danger", "question", "act", "advice", "exit"]
Trend = Literal["", "up", "down"]


@dataclass(frozen=True)
class ScriptLine:
    """A line to read word for word; `href` ticks it as read and is there for the one whose turn it is."""

    text: str
    seconds: int
    read: bool
    href: str


@dataclass(frozen=True)
class KeyChoice:
    """One thing a key records; `grave` where it is a danger sign."""

    key: str
    label: str
    href: str
    urgent: bool = False


@dataclass(frozen=True)
class Prompt:
    """What to say now. Nothing can be recorded with `keys` while a line of `lines` was not read."""

    kind: PromptKind
    heading: str
    text: str
    seconds: int
    simpler: str
    note: str
    lines: list[ScriptLine]
    left_out: list[str]
    keys: list[KeyChoice]
    part: str
    count: str


@dataclass(frozen=True)
class Alarm:
    """The band across the page once danger was recorded: the words to say, and the number to give."""

    signal: Signal
    heading: str
    instruction: str
    numbers: list[PhoneNumber]
    stops: bool


@dataclass(frozen=True)
class StoryItem:
    """One answer of the story so far."""

    question: str
    answer: str
    change_href: str
    urgent: bool


@dataclass(frozen=True)
class Candidate:
    """A cause as it stands now, and which way the last answer moved it."""

    name: str
    chance: str
    tenths: int
    trend: Trend


@dataclass(frozen=True)
class CallerRow:
    """One thing to know about the caller."""

    topic: str
    label: str
    choices: list[Choice]
    chosen: str


@dataclass(frozen=True)
class CallPage:
    """The whole page of one call at one moment. `query` is the address of what holds, `finished` when all was read;
    `booking_href` is there once a visit is the next thing. `firm_details` is as the firm wrote it."""

    prompt: Prompt
    alarm: Alarm | None
    story: list[StoryItem]
    candidates: list[Candidate]
    useful_questions: list[KeyChoice]
    caller: list[CallerRow]
    unknown_params: str
    problems: list[ProblemNote]
    summary: str
    finished: bool
    query: str
    firm_details: list[tuple[str, str]]
    booking_href: str
    previous_sheet_href: str
    undo_href: str
    danger_href: str
    phone_href: str
    qr_href: str
    phrase_index_href: str
    call_id: str
