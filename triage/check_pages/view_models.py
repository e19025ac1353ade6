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
class Answered:
    """One answer already given, and the address of the trail without it."""

    question: str
    answer: str
    change_href: str


@dataclass(frozen=True)
class Choice:
    """One thing that can be pressed; `hint` is a second, smaller line."""

    label: str
    href: str
    hint: str = ""


@dataclass(frozen=True)
class Number:
    """A telephone number as read, what it is for, and its `tel:` address."""

    number: str
    for_what: str
    href: str


@dataclass(frozen=True)
class Complaint:
    """One line of the first page; `also` holds other words people use for it, for the search box."""

    words: str
    also: str
    href: str
    part: str


@dataclass(frozen=True)
class RegionChoice:
    """The region whose rules and numbers are shown, and the others to choose from."""

    code: str
    name: str
    choices: list[Choice]


@dataclass(frozen=True)
class StartPage:
    """The first page: what the oven does wrong, and the ways out for other appliances."""

    heading: str
    intro: str
    filter_label: str
    filter_hint: str
    none_found: str
    complaints: list[Complaint]
    not_mine: list[Choice]
    region: RegionChoice


@dataclass(frozen=True)
class DangerPage:
    """The danger signs; `chosen_before` says that "none of these" was answered earlier."""

    heading: str
    intro: str
    signs: list[Choice]
    none: Choice
    answers: list[Answered]
    chosen_before: bool
    problems: list[str]


@dataclass(frozen=True)
class QuestionPage:
    """One question; `number` counts from one, `at_most` is the most that can be asked."""

    question: str
    why: str
    how: str
    choices: list[Choice]
    cant_tell_href: str
    part: str
    number: int
    at_most: int
    answers: list[Answered]
    problems: list[str]


@dataclass(frozen=True)
class Cause:
    """One possible cause; `tenths` of ten ovens that answer alike have it, as `chance_words` also says."""

    name: str
    chance_words: str
    tenths: int
    explanation: str
    points_to: list[str]
    points_away: list[str]
    part: str


@dataclass(frozen=True)
class Instruction:
    """One thing to do; `parts` are its steps where it has any, as cutting the supply does, `notes` what to know."""

    text: str
    parts: list[str]
    notes: list[str]


@dataclass(frozen=True)
class FlagNote:
    """A red flag beside the main matter of a page: what it is, what to do first, what never."""

    signal: Signal
    heading: str
    hazard: str
    first: list[Instruction]
    never: list[str]


@dataclass(frozen=True)
class MakeSafePage:
    """A red flag: what to do now and never. `also` are further flags, `tell_them` what to say on the telephone,
    `other_calls` how to reach those whose number is not shown here.

    `memory` asks only what can be answered without going back. `bare` when people have to leave: nothing stands on
    the page that does not help them out.
    """

    signal: Signal
    heading: str
    hazard: str
    first: list[Instruction]
    never: list[str]
    tell_them: list[str]
    call: list[Number]
    other_calls: list[str]
    also: list[FlagNote]
    who: str
    then: str
    causes: list[Cause]
    memory: QuestionPage | None
    answers: list[Answered]
    problems: list[str]
    summary: str
    bare: bool
    local_line: str


@dataclass(frozen=True)
class TaskLink:
    """A task for the householder as listed on the advice page, and how it went if it was done."""

    title: str
    minutes: int
    href: str
    done: TaskDone


@dataclass(frozen=True)
class SkilledJob:
    """Work that is not the householder's: what, why, and whose it is. Never how."""

    what: str
    why: str
    who: str


@dataclass(frozen=True)
class AdvicePage:
    """The end of the questions: band, what to do now, likely causes, and what to tell the repairer.

    `solved` when something the person did put it right: then there is no more to do and nobody to tell.
    """

    band: Band
    solved: bool
    heading: str
    meaning: str
    cautions: list[FlagNote]
    leave_off: str
    first: list[str]
    causes: list[Cause]
    cannot_tell: str
    also_check: str
    tasks: list[TaskLink]
    skilled: list[SkilledJob]
    ready: list[str]
    tell: str
    local_line: str
    call: list[Number]
    part: str
    answers: list[Answered]
    problems: list[str]


@dataclass(frozen=True)
class SwitchingOff:
    """Cutting the supply: what comes `before`, the steps of `cut`, what `never`, what the eye `cannot_tell` and where
    power may `also` come from."""

    before: list[str]
    cut: Instruction
    never: list[str]
    cannot_tell: str
    also: list[str]


@dataclass(frozen=True)
class Gate:
    """Something to be sure of before a task opens; `how` says how to make it so, `waits` how long it takes to cool,
    `if_not` is shown once it is answered no or unsure, `looks_off` says what the eye cannot tell."""

    question: str
    yes_href: str
    no_href: str
    unsure_href: str
    state: GateState
    if_not: str
    looks_off: str
    how: SwitchingOff | None
    waits: list[str]


@dataclass(frozen=True)
class Caution:
    """One safety message: hazard, consequence, how to avoid it; `sign` is a number among SIGNS."""

    signal: Signal
    hazard: str
    consequence: str
    avoid: str
    sign: str


@dataclass(frozen=True)
class TaskPage:
    """One task for the householder. Steps are there only when `open`: the task is offered and every gate says yes.

    `closed_text` says why it is not open; `back_on` how the power comes back where it was cut; `result` what to do
    about its outcome once that is known.
    """

    title: str
    why: str
    gates: list[Gate]
    open: bool
    closed_text: str
    cautions: list[Caution]
    tools: list[str]
    minutes: int
    steps: list[Instruction]
    stop_if: list[str]
    back_on: list[str]
    after_question: str
    after_choices: list[Choice]
    result: str
    part: str
    back_href: str
    problems: list[str]


@dataclass(frozen=True)
class ExitPage:
    """A kind way out for what this check is not for; `no_switches` is a smell of gas: touch no switch."""

    heading: str
    lines: list[str]
    who: str
    call: list[Number]
    no_switches: bool
    answers: list[Answered]


Page = StartPage | DangerPage | QuestionPage | MakeSafePage | AdvicePage | TaskPage | ExitPage
