"""The result: how serious it is, what to do now, what it probably is, and who does the rest.

When the likely causes differ on whether the oven may be used, the stricter one is followed.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from typing import Literal

from triage.check_pages.presenters.answers import DID, Answered, answers_so_far
from triage.check_pages.presenters.causes import Cause, causes_of
from triage.check_pages.presenters.flags import FlagNote, flag_note
from triage.check_pages.presenters.phone_numbers import PhoneNumber, numbers_for
from triage.check_pages.presenters.prices import Prices, has_prices, prices_of
from triage.check_pages.presenters.problems import ProblemNote, problem_notes
from triage.check_pages.presenters.professional_work import (
    PREPARATION,
    ProfessionalJob,
    local_rules,
    person_label,
    professional_jobs,
)
from triage.check_pages.presenters.summary import summary_of
from triage.check_pages.presenters.task import result_of
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import TaskDone
from triage.engine import Band, Result, Task
from triage.engine.enums import InterimUse, PerformedBy
from triage.engine.pack import Fault
from triage.jobsheet.booking_rule import is_solved
from triage.jobsheet.shapes import CheckSummary

STRICTER_SHARE = 0.25  # together, causes under which it must stay off decide from this chance on
LIKELY = 0.35


@dataclass(frozen=True)
class Action:
    """One thing to do now, worded in `sentences/action.txt`; a `text` is the pack's or the region's own."""

    kind: Literal["text", "checks", "claim", "book"]
    text: str = ""


@dataclass(frozen=True)
class TaskLink:
    """A task for the householder as listed on the result page, and how it went if it was done."""

    title: str
    minutes: int
    href: str
    done: TaskDone


@dataclass(frozen=True)
class ResultPage:
    """The end of the questions: band, what to do now, likely causes, and what to tell the repairer.

    `solved` when something the person did put it right: then there is no more to do and nobody to tell, and `fixed`
    says what to do if it comes back. `leave_off` with the text of the cause that asks for it, if one does.
    """

    band: str
    solved: bool
    cautions: list[FlagNote]
    local_rules: str
    phone_numbers: list[PhoneNumber]
    part: str
    answers: list[Answered]
    problems: list[ProblemNote]
    fixed: list[str] = field(default_factory=list)
    person: str = ""
    cause: str = ""
    likely: bool = False
    leave_off: bool = False
    leave_off_text: str = ""
    actions: list[Action] = field(default_factory=list)
    causes: list[Cause] = field(default_factory=list)
    indistinguishable: list[str] = field(default_factory=list)
    split: str = ""
    also_check: list[str] = field(default_factory=list)
    tasks: list[TaskLink] = field(default_factory=list)
    jobs: list[ProfessionalJob] = field(default_factory=list)
    preparation: tuple[str, ...] = ()
    prices: Prices | None = None
    costs_href: str = ""
    summary: CheckSummary | None = None


def result_page(check_request: CheckRequest, step: Result) -> ResultPage:
    leading = _leading(check_request, step)
    by_network = leading.performed_by == PerformedBy.NETWORK_OPERATOR
    page = ResultPage(
        band=step.verdict.band.value,
        solved=is_solved(check_request.check, step),
        cautions=[flag_note(check_request, flag, away=False) for flag in step.cautions],
        local_rules=local_rules(check_request, step),
        phone_numbers=numbers_for(check_request.region, ["network"] if by_network else []),
        part=check_request.texts.faults[leading.id].picture,
        answers=answers_so_far(check_request.texts, check_request.answers, check_request.links),
        problems=problem_notes(check_request.texts, check_request.problems),
    )
    return replace(page, fixed=_fixed(check_request)) if page.solved else _unsolved(page, check_request, step)


def _fixed(check_request: CheckRequest) -> list[str]:
    answers = check_request.answers
    fixing = [task for task in check_request.pack.tasks.values() if answers.get(DID + task.id) == "fixed"]
    return [result_of(check_request, task) for task in fixing]


def _unsolved(page: ResultPage, check_request: CheckRequest, step: Result) -> ResultPage:
    verdict, texts = step.verdict, check_request.texts
    stay_off, jobs = _leave_off_text(check_request, step), professional_jobs(check_request, step)
    alike = verdict.alike if len(verdict.alike) > 1 else ()
    priced = has_prices(step)
    return replace(
        page,
        person=person_label(check_request, _leading(check_request, step).performed_by),
        cause=texts.faults[verdict.causes[0].fault].name,
        likely=verdict.causes[0].chance >= LIKELY,
        leave_off=bool(stay_off) or _is_grave(step),
        leave_off_text=stay_off,
        actions=[action for action in _actions(check_request, step) if action.text or action.kind != "text"],
        causes=causes_of(check_request, verdict),
        indistinguishable=[texts.faults[fault].name for fault in alike],
        split=texts.families[verdict.family].split if alike else "",
        also_check=[texts.faults[fault].name for fault in verdict.also_check],
        tasks=[_task_link(check_request, task) for task in step.tasks],
        jobs=jobs,
        preparation=PREPARATION if jobs else (),
        prices=prices_of(check_request) if priced else None,
        costs_href=check_request.links.costs() if priced else "",
        summary=summary_of(check_request),
    )


def _leading(check_request: CheckRequest, step: Result) -> Fault:
    return check_request.pack.faults[step.verdict.causes[0].fault]


def _is_grave(step: Result) -> bool:
    """Whether nothing on the page may let the oven be used: the band says so, or a caution was raised."""
    return step.verdict.band is Band.MAKE_SAFE or bool(step.cautions)


def _leave_off_text(check_request: CheckRequest, step: Result) -> str:
    """What the cause that decides it says of leaving the oven off; nothing where no likely cause asks for it."""
    faults = check_request.pack.faults
    off = [cause for cause in step.verdict.causes if faults[cause.fault].interim_use == InterimUse.LEAVE_OFF]
    if off and (off[0] is step.verdict.causes[0] or _is_grave(step) or sum(c.chance for c in off) >= STRICTER_SHARE):
        return check_request.texts.faults[off[0].fault].now
    return ""


def _actions(check_request: CheckRequest, step: Result) -> Iterator[Action]:
    leading, band = _leading(check_request, step), step.verdict.band
    text, grave = check_request.texts.faults[leading.id], _is_grave(step)
    if not grave:
        for task in check_request.pack.tasks.values():
            yield Action("text", result_of(check_request, task))
    checks = [Action("checks")] if step.tasks else []
    use = [] if grave or _leave_off_text(check_request, step) else [Action("text", text.now)]
    yield from [*checks, *use] if band is Band.SELF_CHECK else [*use, *checks]
    if band in (Band.QUALIFIED, Band.MAKE_SAFE):
        yield Action("claim", check_request.region.claim_first)
        yield Action("book", person_label(check_request, _booked(leading.performed_by)))
    elif leading.performed_by == PerformedBy.HOUSEHOLDER:
        yield Action("text", text.job)


def _booked(who: str) -> str:
    """Nobody books the householder: where a caution makes a harmless cause a skilled person's, a technician comes."""
    return PerformedBy.TECHNICIAN if who == PerformedBy.HOUSEHOLDER else who


def _task_link(check_request: CheckRequest, task: Task) -> TaskLink:
    done: dict[str, TaskDone] = {"fixed": "fixed", "not-fixed": "no-change"}
    answer = check_request.answers.get(task.outcome)
    state: TaskDone = "" if answer is None else done.get(answer, "done")
    title, href = check_request.texts.tasks[task.id].title, check_request.links.task(task.id)
    return TaskLink(title, round(task.minutes), href, state)
