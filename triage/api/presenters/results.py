"""The steps that end the questions. Tasks are linked and never described: their page asks first if it is safe."""

from collections.abc import Sequence

from triage.api.presenters.parts import Json, flag_json, instructions_json, note_json, phone_numbers_json
from triage.api.presenters.question import question_json
from triage.check_pages.page_models import AdvicePage
from triage.check_pages.presenters.advice import advice_page
from triage.check_pages.presenters.leave import exit_page
from triage.check_pages.presenters.make_safe import make_safe_page
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import Cause
from triage.engine import Emergency, Result, Verdict


def emergency_json(check_request: CheckRequest, step: Emergency) -> Json:
    """`evacuate`: people have to get out, so nothing may be read out before `steps`, `do_not` and `phone_numbers`."""
    page = make_safe_page(check_request, step)
    return {
        "kind": "emergency",
        "band": step.verdict.band.value,
        "evacuate": page.bare,
        "flags": [flag_json(check_request, flag) for flag in step.flags],
        "signal": page.signal,
        "heading": page.heading,
        "hazard": page.hazard,
        "steps": instructions_json(page.first),
        "do_not": page.never,
        "mention": page.tell_them,
        "phone_numbers": phone_numbers_json(page.call),
        "other_contacts": page.other_calls,
        "other_hazards": [note_json(note) for note in page.also],
        "contact": page.who,
        "next": page.then,
        "causes": _causes(step.verdict, page.causes),
        "follow_up": question_json(check_request, step.follow_up_question)
        if step.follow_up_question and not page.bare
        else None,
        "summary": page.summary,
        "local_rules": page.local_line,
    }


def result_json(check_request: CheckRequest, step: Result) -> Json:
    page = advice_page(check_request, step)
    return {
        "kind": "result",
        "band": page.band,
        "solved": page.solved,
        "flags": [flag_json(check_request, flag) for flag in step.cautions],
        "heading": page.heading,
        "meaning": page.meaning,
        "cautions": [note_json(note) for note in page.cautions],
        "leave_off": page.leave_off,
        "steps": page.first,
        "causes": _causes(step.verdict, page.causes),
        "indistinguishable": page.cannot_tell,
        "related": page.also_check,
        "tasks": _tasks(check_request, step, page),
        "professional_work": [{"what": job.what, "why": job.why, "performed_by": job.who} for job in page.skilled],
        "preparation_tips": page.ready,
        "phone_numbers": phone_numbers_json(page.call),
        "summary": page.tell,
        "local_rules": page.local_line,
    }


def out_of_scope_json(check_request: CheckRequest, reason: str) -> Json:
    """`no_switches`: a smell of gas, so no switch may be touched."""
    page = exit_page(check_request, reason)
    return {
        "kind": "out-of-scope",
        "reason": reason,
        "no_switches": page.no_switches,
        "heading": page.heading,
        "lines": page.lines,
        "contact": page.who,
        "phone_numbers": phone_numbers_json(page.call),
    }


def _causes(verdict: Verdict, shown: Sequence[Cause]) -> list[Json]:
    """Those the page shows, which are all or none. A chance is so many of ten ovens, and nothing finer is claimed."""
    return [
        {
            "fault": cause.fault,
            "name": text.name,
            "probability_per_ten": text.tenths,
            "probability_text": text.chance_words,
            "explanation": text.explanation,
            "evidence_for": text.points_to,
            "evidence_against": text.points_away,
        }
        for cause, text in zip(verdict.causes, shown, strict=False)
    ]


def _tasks(check_request: CheckRequest, step: Result, page: AdvicePage) -> list[Json]:
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
