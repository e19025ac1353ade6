"""One task: offered or not, its gates, and only then its steps.

Whether it is offered comes from the engine for exactly these answers; an address alone never opens it.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Literal

from triage.check_pages.presenters.answers import DID, answer_label
from triage.check_pages.presenters.isolation import FullIsolation, Instruction, full_isolation, instructions
from triage.check_pages.presenters.problems import ProblemNote, problem_notes
from triage.check_pages.presenters.readings.form import ReadingForm, measured_by, reading_form
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import ISO_SIGNS, Choice, Signal
from triage.engine import CANT_TELL, Question, Result, Task, gate_answers, is_open
from triage.engine.enums import SafetyGate

TOUCHED = "lamp-glass-seal"
COLDEST = {"lamp", "glass", "seal", "hinge", "door"}

GateState = Literal["", "yes", "no", "unsure"]
ClosedBecause = Literal["", "not-yet", "unanswered", "removed", "too-early", "not-now"]
"""Why a task is not open: a gate says no or waits, the rules of the region, questions come first, or the answers."""


@dataclass(frozen=True)
class Caution:
    """One safety message: hazard, consequence, how to avoid it; `sign` is a number among ISO_SIGNS."""

    signal: Signal
    hazard: str
    consequence: str
    avoid: str
    sign: str


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


def task_page(check_request: CheckRequest, name: str) -> TaskPage:
    task, text = check_request.pack.tasks[name], check_request.texts.tasks[name]
    offered = is_offered(check_request, task)
    opened = offered and is_open(task, check_request.answers)
    return TaskPage(
        title=text.title,
        why=text.why,
        gates=[_gate(check_request, task, gate) for gate in task.gates] if offered else [],
        open=opened,
        closed="" if opened else _why_closed(check_request, task, offered),
        region_name=check_request.region.name,
        cautions=cautions_of(check_request, task) if opened else [],
        tools=list(text.tools) if offered else [],
        minutes=round(task.minutes),
        steps=instructions(check_request, text.steps) if opened else [],
        stop_if=list(text.stop_if) if opened else [],
        back_on=list(check_request.texts.isolation.back_on) if opened and SafetyGate.SUPPLY_OFF in task.gates else [],
        after_question=_after_question(check_request, task) if opened else "",
        after_choices=_outcomes(check_request, task) if opened else [],
        reading=_reading(check_request, task) if opened else None,
        result=result_of(check_request, task) if offered else "",
        part=task.picture,
        back_href=check_request.links.step(),
        problems=problem_notes(check_request.texts, check_request.problems),
    )


def is_offered(check_request: CheckRequest, task: Task) -> bool:
    """Whether these answers, and no others, make the engine offer the task: on the advice, or beside a question."""
    if isinstance(check_request.step, Question):
        return check_request.step.better_test is not None and check_request.step.better_test.id == task.id
    return isinstance(check_request.step, Result) and task in check_request.step.tasks


def result_of(check_request: CheckRequest, task: Task) -> str:
    """What to do now that it did or did not put the oven right; nothing before that is known."""
    text = check_request.texts.tasks[task.id]
    results = {"fixed": text.fixed, "not-fixed": text.not_fixed}
    return results.get(check_request.answers.get(DID + task.id, ""), "")


def _gate(check_request: CheckRequest, task: Task, gate: str) -> Gate:
    return gate_of(check_request, task, gate, lambda more: check_request.links.task(task.id, more))


def gate_of(check_request: CheckRequest, task: Task, gate: str, here: Callable[[Mapping[str, str]], str]) -> Gate:
    """One gate of a task; `here` is the address of the page it stands on with more answers."""
    text = check_request.texts.gates[gate]
    state = gate_state(check_request.answers.get(gate, ""))
    how = full_isolation(check_request) if gate == SafetyGate.SUPPLY_OFF else None
    waits = _waits(check_request, task) if gate == SafetyGate.COLD else []
    yes, no, unsure = (here({gate: answer}) for answer in ("yes", "no", "unsure"))
    return Gate(text.ask, yes, no, unsure, state, text.if_not, text.looks_off, how, waits)


def _waits(check_request: CheckRequest, task: Task) -> list[str]:
    """How long to wait; what hands get near to has to be colder still."""
    cooling = check_request.texts.isolation.cooling
    return [line for after, line in cooling.items() if after != TOUCHED or task.picture in COLDEST]


def gate_state(answer: str) -> GateState:
    if answer in ("unsure", CANT_TELL):
        return "unsure"
    return "yes" if answer == "yes" else "no" if answer == "no" else ""


def _why_closed(check_request: CheckRequest, task: Task, offered: bool) -> ClosedBecause:
    if offered:
        given = gate_answers(task, check_request.answers).values()
        return "not-yet" if "no" in given or "unsure" in given else "unanswered"
    if task.id in check_request.check.region.removed_tasks:
        return "removed"
    return "too-early" if isinstance(check_request.step, Question) else "not-now"


def cautions_of(check_request: CheckRequest, task: Task) -> list[Caution]:
    cautions = check_request.texts.tasks[task.id].cautions
    return [Caution(c.signal, c.hazard, c.consequence, c.avoid, ISO_SIGNS[c.sign]) for c in cautions]


def _reading(check_request: CheckRequest, task: Task) -> ReadingForm | None:
    """The form for its figures, where its outcome is a reading."""
    measured = measured_by(check_request.pack, task)
    return reading_form(check_request, measured, check_request.links.task_path(task.id)) if measured else None


def _after_question(check_request: CheckRequest, task: Task) -> str:
    question = check_request.texts.questions.get(task.outcome)
    return question.ask if question else ""


def _outcomes(check_request: CheckRequest, task: Task) -> list[Choice]:
    """What may have come of it, each leading back to the check with that answer."""
    asked = check_request.pack.observations[task.outcome]
    options = [*asked.options, CANT_TELL] if task.outcome in check_request.texts.questions else asked.options
    return [
        Choice(
            answer_label(check_request.texts, task.outcome, option), check_request.links.step({task.outcome: option})
        )
        for option in options
    ]
