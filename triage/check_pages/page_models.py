"""The facts of tasks and readings, as templates read them; those of the other pages stand beside what finds them."""

from dataclasses import dataclass
from typing import Literal

from triage.check_pages.presenters.isolation import FullIsolation, Instruction
from triage.check_pages.presenters.problems import ProblemNote
from triage.check_pages.presenters.readings.form import ReadingForm
from triage.check_pages.view_models import Caution, Choice, GateState

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
    how: FullIsolation | None
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
    problems: list[ProblemNote]
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
    problems: list[ProblemNote]
