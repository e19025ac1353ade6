"""The steps that end the questions. Tasks are linked and never described: their page asks first if it is safe."""

from collections.abc import Sequence

from django.utils.text import capfirst

from triage.api.presenters.parts import Json, flag_json, instructions_json, note_json, phone_numbers_json
from triage.api.presenters.question import question_json
from triage.check_pages.presenters.causes import Cause
from triage.check_pages.presenters.emergency import emergency_page
from triage.check_pages.presenters.out_of_scope import out_of_scope_page
from triage.check_pages.presenters.result import ResultPage, result_page
from triage.check_pages.request import CheckRequest
from triage.engine import Emergency, Result, Verdict
from triage.jobsheet.formats.text import short_text
from triage.jobsheet.sentences import sentence
from triage.jobsheet.wording import tenths


def emergency_json(check_request: CheckRequest, step: Emergency) -> Json:
    """`evacuate`: people have to get out, so nothing may be read out before `steps`, `do_not` and `phone_numbers`."""
    page = emergency_page(check_request, step)
    return {
        "kind": "emergency",
        "band": step.verdict.band.value,
        "evacuate": page.evacuate,
        "flags": [flag_json(check_request, flag) for flag in step.flags],
        "signal": page.signal,
        "heading": page.heading,
        "hazard": page.hazard,
        "steps": instructions_json(page.steps),
        "do_not": page.prohibitions,
        "mention": page.mention,
        "phone_numbers": phone_numbers_json(page.phone_numbers),
        "other_contacts": [sentence("other_contact", contact=contact) for contact in page.other_contacts],
        "other_hazards": [note_json(note) for note in page.other_flags],
        "contact": page.contact,
        "next": page.next_step,
        "causes": _causes(step.verdict, page.causes),
        "follow_up": question_json(check_request, step.follow_up_question)
        if step.follow_up_question and not page.evacuate
        else None,
        "summary": short_text(page.summary) if page.summary else "",
        "local_rules": page.local_rules,
    }


def result_json(check_request: CheckRequest, step: Result) -> Json:
    page = result_page(check_request, step)
    return {
        "kind": "result",
        "band": page.band,
        "solved": page.solved,
        "flags": [flag_json(check_request, flag) for flag in step.cautions],
        "heading": sentence("result_heading", page=page),
        "meaning": sentence("result_meaning", page=page),
        "cautions": [note_json(note) for note in page.cautions],
        "leave_off": sentence("leave_off", page=page) if page.leave_off else "",
        "steps": [sentence("action", action=action) for action in page.actions],
        "causes": _causes(step.verdict, page.causes),
        "indistinguishable": sentence("indistinguishable", page=page) if page.indistinguishable else "",
        "related": sentence("also_check", page=page) if page.also_check else "",
        "tasks": _tasks(check_request, step, page),
        "professional_work": [
            {"what": job.what, "why": job.why, "performed_by": f"{capfirst(job.who)}."} for job in page.jobs
        ],
        "preparation_tips": [sentence("preparation", item=item) for item in page.preparation],
        "phone_numbers": phone_numbers_json(page.phone_numbers),
        "summary": short_text(page.summary) if page.summary else "",
        "local_rules": page.local_rules,
    }


def out_of_scope_json(check_request: CheckRequest, reason: str) -> Json:
    """`no_switches`: a smell of gas, so no switch may be touched."""
    page = out_of_scope_page(check_request, reason)
    return {
        "kind": "out-of-scope",
        "reason": reason,
        "no_switches": page.no_switches,
        "heading": page.heading,
        "lines": page.lines,
        "contact": page.contact,
        "phone_numbers": phone_numbers_json(page.phone_numbers),
    }


def _causes(verdict: Verdict, shown: Sequence[Cause]) -> list[Json]:
    """Those the page shows, which are all or none. A chance is so many of ten ovens, and nothing finer is claimed."""
    return [
        {
            "fault": cause.fault,
            "name": facts.name,
            "probability_per_ten": tenths(cause.chance),
            "probability_text": sentence("chance", cause=facts),
            "explanation": facts.explanation,
            "evidence_for": facts.points_to,
            "evidence_against": facts.points_away,
        }
        for cause, facts in zip(verdict.causes, shown, strict=False)
    ]


def _tasks(check_request: CheckRequest, step: Result, page: ResultPage) -> list[Json]:
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
