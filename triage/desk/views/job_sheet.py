"""The firm's job sheets: the list, one sheet, and what is done to it. Opening a sheet leaves an audit line."""

from django.contrib import messages
from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.layout import render_page
from triage.desk.presenters.inbox import inbox_page, parse_filter
from triage.desk.presenters.job_sheet import audit_lines, sheet_page
from triage.desk.request import MemberRequest
from triage.desk.sheet_lookup import get_sheet, get_sheet_logged
from triage.jobsheet.actions import add_note, erase, set_status
from triage.jobsheet.contents import serialize_sheet
from triage.jobsheet.errors import Refused
from triage.jobsheet.formats.repair_form import repair_form
from triage.knowledge.library import library
from triage.models import JobSheet, Outcome
from triage.models.audit_entry import Actor
from triage.models.firm import Role
from triage.models.job_sheet import MAX_NOTE_LENGTH, SheetStatus
from triage.models.outcome import RepairResult


@require_safe
@require_role(*ALL_ROLES)
def inbox(request: MemberRequest) -> HttpResponse:
    page = inbox_page(request.member, parse_filter(request.GET), request.GET.get("page", "1"))
    return render_page(request, "inbox", {"inbox": page})


@require_safe
@require_role(*ALL_ROLES)
def job_sheet(request: MemberRequest, reference: str) -> HttpResponse:
    return _sheet_page(request, get_sheet_logged(request, reference))


@require_POST
@require_role(*ALL_ROLES)
def change_status(request: MemberRequest, reference: str) -> HttpResponse:
    sheet, wanted = get_sheet(request, reference), request.POST.get("status", "")
    try:
        set_status(sheet=sheet, status=wanted, member=request.member)
        messages.success(request, _("Status: %(status)s.") % {"status": SheetStatus(wanted).label})
    except Refused as refused:
        messages.error(request, str(refused))
    return HttpResponseRedirect(reverse("desk-sheet", args=[sheet.reference]))


@require_POST
@require_role(*ALL_ROLES)
def add_note_to_sheet(request: MemberRequest, reference: str) -> HttpResponse:
    """What cannot be taken stays in its box, with what is wrong."""
    sheet, text = get_sheet(request, reference), request.POST.get("text", "")
    try:
        add_note(sheet=sheet, text=text, member=request.member)
    except Refused as refused:
        return _sheet_page(request, get_sheet_logged(request, reference), text, str(refused))
    return HttpResponseRedirect(reverse("desk-sheet", args=[sheet.reference]) + "#notes")


@require_http_methods(["GET", "HEAD", "POST"])
@require_role(Role.OWNER)
def erase_sheet(request: MemberRequest, reference: str) -> HttpResponse:
    """Erases whose oven it was, after a page that says what goes and what stays."""
    sheet = get_sheet(request, reference)
    if request.method != "POST":
        return render_page(request, "erase_sheet", {"sheet": sheet})
    if request.POST.get("sure") != "yes":
        problem = _("Tick the box to confirm. Erased data cannot be restored.")
        context = {"sheet": get_sheet_logged(request, reference), "problem": problem}
        return render_page(request, "erase_sheet", context, status=400)
    erase(sheet=sheet, actor=Actor.MEMBER, member=request.member)
    messages.success(request, _("Job sheet %(reference)s erased.") % {"reference": sheet.reference})
    return HttpResponseRedirect(reverse("desk-inbox"))


def _sheet_page(request: MemberRequest, sheet: JobSheet, note: str = "", problem: str = "") -> HttpResponse:
    """The page; with a note that could not be taken, what is wrong with it."""
    member, contents = request.member, serialize_sheet(sheet)
    is_owner = member.role == Role.OWNER
    context = {
        "page": sheet_page(contents),
        "sheet": sheet,
        "statuses": [(value, label, value == sheet.status) for value, label in SheetStatus.choices],
        "notes": sheet.notes.select_related("author__user"),
        "note": note,
        "note_problem": problem,
        "longest_note": MAX_NOTE_LENGTH,
        "outcome": _outcome_summary(sheet),
        "may_record": member.role != Role.AGENT,
        "is_owner": is_owner,
        "audit": audit_lines(sheet) if is_owner else [],
        "has_form": not sheet.erased and repair_form(contents, member.firm, timezone.localdate()) is not None,
    }
    return render_page(request, "job_sheet", context, status=400 if problem else 200)


def _outcome_summary(sheet: JobSheet) -> dict[str, object] | None:
    outcome = Outcome.objects.filter(sheet=sheet).first()
    if outcome is None:
        return None
    faults = library().texts_for(sheet.region).faults
    return {
        "found": "; ".join(faults[fault].name if fault in faults else fault for fault in outcome.found),
        "fitted": "; ".join(outcome.fitted),
        "result": RepairResult(outcome.result).label,
        "first_visit": outcome.fixed_first_visit,
        "minutes": outcome.minutes,
    }
