"""One job sheet. Opening it leaves an audit line."""

from typing import cast

from django.http import HttpResponse
from django.utils import timezone
from django.views.decorators.http import require_safe

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.layout import DeskRequest, render_page
from triage.desk.presenters.audit import audit_lines
from triage.desk.presenters.job_sheet import sheet_page
from triage.desk.sheet_lookup import get_sheet_logged
from triage.jobsheet.contents import contents_of
from triage.jobsheet.formats.repair_form import repair_form
from triage.knowledge.library import library
from triage.models import JobSheet, Member, Outcome
from triage.models.firm import Role
from triage.models.job_sheet import LONGEST_NOTE, Status
from triage.models.outcome import Result


@require_safe
@require_role(*ALL_ROLES)
def job_sheet(request: DeskRequest, reference: str) -> HttpResponse:
    return render_sheet(request, get_sheet_logged(request, reference))


def render_sheet(request: DeskRequest, sheet: JobSheet, note: str = "", problem: str = "") -> HttpResponse:
    """The page; with a note that could not be taken, what is wrong with it."""
    member, contents = cast(Member, request.member), contents_of(sheet)
    is_owner = member.role == Role.OWNER
    context = {
        "page": sheet_page(contents),
        "sheet": sheet,
        "statuses": [(value, words, value == sheet.status) for value, words in Status.choices],
        "notes": sheet.notes.select_related("author__user"),
        "note": note,
        "note_problem": problem,
        "longest_note": LONGEST_NOTE,
        "outcome": outcome_summary(sheet),
        "may_record": member.role != Role.AGENT,
        "is_owner": is_owner,
        "audit": audit_lines(sheet) if is_owner else [],
        "has_form": not sheet.erased and repair_form(contents, member.firm, timezone.localdate()) is not None,
    }
    return render_page(request, "job_sheet", context, status=400 if problem else 200)


def outcome_summary(sheet: JobSheet) -> dict[str, object] | None:
    outcome = Outcome.objects.filter(sheet=sheet).select_related("recorded_by__user").first()
    if outcome is None:
        return None
    names = library().words(sheet.region).faults
    return {
        "found": "; ".join(names[fault].name if fault in names else fault for fault in outcome.found),
        "fitted": "; ".join(outcome.fitted),
        "result": Result(outcome.result).label,
        "first_visit": outcome.fixed_first_visit,
        "minutes": outcome.minutes,
        "recorded": outcome.recorded,
    }
