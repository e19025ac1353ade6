"""The advice: how serious it is, what to do now, what it probably is, and who does the rest.

When the likely causes differ on whether the oven may be used, the stricter one is followed.
"""

from collections.abc import Iterable

from django.utils.translation import gettext as _

from triage.check_pages.page_models import AdvicePage, TaskLink
from triage.check_pages.presenters.answers import DID, answers_so_far
from triage.check_pages.presenters.causes import causes_of
from triage.check_pages.presenters.flags import note_of
from triage.check_pages.presenters.numbers import calls_for
from triage.check_pages.presenters.prices import has_prices, price_lines
from triage.check_pages.presenters.problems import problem_sentences
from triage.check_pages.presenters.skilled import a_person, local_rules, ready_for_them, skilled_jobs
from triage.check_pages.presenters.summary import summary_of
from triage.check_pages.presenters.task import result_of
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import TaskDone
from triage.engine import Band, Result, Task
from triage.engine.enums import InterimUse, PerformedBy

STRICTER_SHARE = 0.25  # together, causes under which it must stay off decide from this chance on
LIKELY = 0.35


def advice_page(check_request: CheckRequest, step: Result) -> AdvicePage:
    solved = is_solved(check_request, step)
    leading = check_request.pack.faults[step.verdict.causes[0].fault]
    jobs = [] if solved else skilled_jobs(check_request, step)
    by_network = leading.performed_by == PerformedBy.NETWORK_OPERATOR
    priced = not solved and has_prices(step)
    return AdvicePage(
        band=step.verdict.band.value,
        solved=solved,
        heading=_("That put it right") if solved else _heading(check_request, step),
        meaning=_solved(check_request) if solved else _meaning(check_request, step),
        cautions=[note_of(check_request, flag, away=False) for flag in step.cautions],
        leave_off="" if solved else _leave_off(check_request, step),
        first=[] if solved else _what_now(check_request, step),
        causes=[] if solved else causes_of(check_request, step.verdict),
        cannot_tell="" if solved else _cannot_tell(check_request, step),
        also_check="" if solved else _also_check(check_request, step),
        tasks=[] if solved else [_task_link(check_request, task) for task in step.tasks],
        skilled=jobs,
        ready=ready_for_them() if jobs else [],
        cost_lines=price_lines(check_request) if priced else [],
        costs_href=check_request.links.costs() if priced else "",
        tell="" if solved else summary_of(check_request),
        local_line=local_rules(check_request, step),
        call=calls_for(check_request.region, ["network"] if by_network else []),
        part=check_request.texts.faults[leading.id].picture,
        answers=answers_so_far(check_request.texts, check_request.answers, check_request.links),
        problems=problem_sentences(check_request.texts, check_request.problems),
    )


def is_solved(check_request: CheckRequest, step: Result) -> bool:
    """Whether a task put it right; never while a caution or a grave band stands."""
    fixed = any(o.startswith(DID) and answer == "fixed" for o, answer in check_request.answers.items())
    return fixed and not step.cautions and step.verdict.band in (Band.NORMAL, Band.SELF_CHECK)


def _heading(check_request: CheckRequest, step: Result) -> str:
    band = step.verdict.band
    if band is Band.MAKE_SAFE:
        return _("Leave it off until it has been checked")
    if band is Band.QUALIFIED:
        who = check_request.pack.faults[step.verdict.causes[0].fault].performed_by
        return _("This is a job for %(person)s") % {"person": a_person(check_request, who)}
    if band is Band.SELF_CHECK:
        return _("You may be able to put this right")
    return _("It seems to work as it should")


def _meaning(check_request: CheckRequest, step: Result) -> str:
    """The likeliest cause in one sentence, as sure as it is and no surer."""
    first = step.verdict.causes[0]
    words = {"cause": check_request.texts.faults[first.fault].name}
    if first.chance >= LIKELY:
        return _("Most likely: %(cause)s.") % words
    return _("Your answers fit more than one cause. The likeliest is: %(cause)s.") % words


def _solved(check_request: CheckRequest) -> str:
    tasks = check_request.pack.tasks.values()
    told = [result_of(check_request, task) for task in tasks if check_request.answers.get(DID + task.id) == "fixed"]
    return " ".join(told)


def _is_grave(step: Result) -> bool:
    """Whether nothing on the page may let the oven be used: the band says so, or a caution was raised."""
    return step.verdict.band is Band.MAKE_SAFE or bool(step.cautions)


def _leave_off(check_request: CheckRequest, step: Result) -> str:
    """The sentence that keeps the oven off, or nothing where it may be used in some way."""
    faults = check_request.pack.faults
    off = [cause for cause in step.verdict.causes if faults[cause.fault].interim_use == InterimUse.LEAVE_OFF]
    if off and (off[0] is step.verdict.causes[0] or _is_grave(step) or sum(c.chance for c in off) >= STRICTER_SHARE):
        return check_request.texts.faults[off[0].fault].now
    return _("Leave the oven off until it has been checked.") if _is_grave(step) else ""


def _what_now(check_request: CheckRequest, step: Result) -> list[str]:
    leading = check_request.pack.faults[step.verdict.causes[0].fault]
    text = check_request.texts.faults[leading.id]
    lines = [] if _is_grave(step) else [result_of(check_request, task) for task in check_request.pack.tasks.values()]
    checks = [checks_below()] if step.tasks else []
    use = [] if _leave_off(check_request, step) else [text.now]
    lines += [*checks, *use] if step.verdict.band is Band.SELF_CHECK else [*use, *checks]
    if step.verdict.band in (Band.QUALIFIED, Band.MAKE_SAFE):
        person = a_person(check_request, _booked(leading.performed_by))
        lines.append(_("Before you pay for a repair: %(claim)s") % {"claim": check_request.region.claim_first})
        lines.append(_("Book %(person)s.") % {"person": person} + f" {summary_below()}")
    elif leading.performed_by == PerformedBy.HOUSEHOLDER:
        lines.append(text.job)
    return [line for line in lines if line]


def checks_below() -> str:
    return _("Do the checks below, if you like. Each one first asks if it is safe to start.")


def summary_below() -> str:
    return _("Read out or send the summary below.")


def _booked(who: str) -> str:
    """Nobody books the householder: where a caution makes a harmless cause a skilled person's, a technician comes."""
    return PerformedBy.TECHNICIAN if who == PerformedBy.HOUSEHOLDER else who


def _cannot_tell(check_request: CheckRequest, step: Result) -> str:
    if len(step.verdict.alike) < 2:
        return ""
    names = _listed(check_request.texts.faults[fault].name for fault in step.verdict.alike)
    words = {"names": names, "split": check_request.texts.families[step.verdict.family].split}
    return _("These cannot be told apart without opening the oven: %(names)s. %(split)s") % words


def _also_check(check_request: CheckRequest, step: Result) -> str:
    if not step.verdict.also_check:
        return ""
    names = _listed(check_request.texts.faults[fault].name for fault in step.verdict.also_check)
    return _("Worth a look at the same visit, as one often leads to the other: %(names)s.") % {"names": names}


def _listed(names: Iterable[str]) -> str:
    return "; ".join(names)


def _task_link(check_request: CheckRequest, task: Task) -> TaskLink:
    done: dict[str, TaskDone] = {"fixed": "fixed", "not-fixed": "no-change"}
    answer = check_request.answers.get(task.outcome)
    state: TaskDone = "" if answer is None else done.get(answer, "done")
    return TaskLink(
        check_request.texts.tasks[task.id].title, round(task.minutes), check_request.links.task(task.id), state
    )
