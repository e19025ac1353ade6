"""The steps that end the questions. Tasks are named and linked, never told: their page asks first if it is safe."""

from collections.abc import Sequence

from triage.api.presenters.parts import Told, told_flag, told_instructions, told_note, told_numbers
from triage.api.presenters.question import told_question
from triage.check_pages.page_models import AdvicePage
from triage.check_pages.presenters.advice import advice_page
from triage.check_pages.presenters.leave import exit_page
from triage.check_pages.presenters.make_safe import make_safe_page
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import Cause
from triage.engine import Emergency, Result, Verdict


def told_make_safe(check_request: CheckRequest, step: Emergency) -> Told:
    """`bare`: people have to get out, so nothing may be read out before `first`, `never` and `call`."""
    page = make_safe_page(check_request, step)
    return {
        "kind": "make-safe",
        "band": step.verdict.band.value,
        "bare": page.bare,
        "flags": [told_flag(check_request, flag) for flag in step.flags],
        "signal": page.signal,
        "heading": page.heading,
        "hazard": page.hazard,
        "first": told_instructions(page.first),
        "never": page.never,
        "tell_them": page.tell_them,
        "call": told_numbers(page.call),
        "other_calls": page.other_calls,
        "also": [told_note(note) for note in page.also],
        "who": page.who,
        "then": page.then,
        "causes": _causes(step.verdict, page.causes),
        "memory": told_question(check_request, step.follow_up_question)
        if step.follow_up_question and not page.bare
        else None,
        "tell": page.summary,
        "local_rules": page.local_line,
    }


def told_advice(check_request: CheckRequest, step: Result) -> Told:
    page = advice_page(check_request, step)
    return {
        "kind": "advice",
        "band": page.band,
        "solved": page.solved,
        "flags": [told_flag(check_request, flag) for flag in step.cautions],
        "heading": page.heading,
        "meaning": page.meaning,
        "cautions": [told_note(note) for note in page.cautions],
        "leave_off": page.leave_off,
        "first": page.first,
        "causes": _causes(step.verdict, page.causes),
        "cannot_tell": page.cannot_tell,
        "also_check": page.also_check,
        "tasks": _tasks(check_request, step, page),
        "skilled": [{"what": job.what, "why": job.why, "who": job.who} for job in page.skilled],
        "ready": page.ready,
        "call": told_numbers(page.call),
        "tell": page.tell,
        "local_rules": page.local_line,
    }


def told_exit(check_request: CheckRequest, reason: str) -> Told:
    """`no_switches`: a smell of gas, so no switch may be touched."""
    page = exit_page(check_request, reason)
    return {
        "kind": "not-this",
        "reason": reason,
        "no_switches": page.no_switches,
        "heading": page.heading,
        "lines": page.lines,
        "who": page.who,
        "call": told_numbers(page.call),
    }


def _causes(verdict: Verdict, shown: Sequence[Cause]) -> list[Told]:
    """Those the page shows, which are all or none. A chance is so many of ten ovens, and nothing finer is claimed."""
    return [
        {
            "fault": cause.fault,
            "name": words.name,
            "tenths": words.tenths,
            "chance_words": words.chance_words,
            "explanation": words.explanation,
            "points_to": words.points_to,
            "points_away": words.points_away,
        }
        for cause, words in zip(verdict.causes, shown, strict=False)
    ]


def _tasks(check_request: CheckRequest, step: Result, page: AdvicePage) -> list[Told]:
    """Those the page lists, which are all or none."""
    return [
        {
            "task": task.id,
            "title": link.title,
            "minutes": link.minutes,
            "href": check_request.origin + link.href,
            "done": link.done,
        }
        for task, link in zip(step.tasks, page.tasks, strict=False)
    ]
