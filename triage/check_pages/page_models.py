"""The whole pages, as templates read them; what they are made of is in `view_models`."""

from dataclasses import dataclass
from typing import Literal

from triage.check_pages.reading_pages import ReadingForm
from triage.check_pages.view_models import (
    Answered,
    Band,
    Cause,
    Caution,
    Choice,
    FlagNote,
    GateState,
    Instruction,
    Number,
    Signal,
    SwitchingOff,
    TaskDone,
)


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
    readings: list[Choice]
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
    """One question; `number` counts from one, `at_most` is the most that can be asked. `better` is a test that could
    tell more, or nothing."""

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
    better: Choice | None = None


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
    cost_lines: list[str]
    costs_href: str
    tell: str
    local_line: str
    call: list[Number]
    part: str
    answers: list[Answered]
    problems: list[str]


ClosedBecause = Literal["", "not-yet", "unanswered", "removed", "too-early", "not-now"]
"""Why a task is not open: a gate says no or waits, the rules of the region, questions come first, or the answers."""


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
class TaskPage:
    """One task for the householder. Steps are there only when `open`: the task is offered and every gate says yes.

    `closed` says why it is not open; `back_on` how the power comes back where it was cut; `result` what to do about
    its outcome once that is known, `reading` the form for its figures where there are any. Where `after_question` is
    empty it is asked whether the task put it right.
    """

    title: str
    why: str
    gates: list[Gate]
    open: bool
    closed: ClosedBecause
    region_name: str
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
    reading: ReadingForm | None = None


@dataclass(frozen=True)
class ReadingPage:
    """A reading by itself, without a check: cautions, gates, then the form. It may be `removed` by the rules of the
    region or need `heat`, which this page never allows; `how` says how to look safely. The form is there only when
    every gate says yes."""

    heading: str
    intro: str
    removed: bool
    region_name: str
    heat: bool
    cautions: list[Caution]
    gates: list[Gate]
    how: str
    form: ReadingForm | None
    check_href: str
    part: str
    local_line: str
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


Page = StartPage | DangerPage | QuestionPage | MakeSafePage | AdvicePage | TaskPage | ReadingPage | ExitPage
