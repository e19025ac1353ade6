"""A job sheet in its other forms: text, JSON, calendar file, QR code, repair form, photo. Each leaves an audit line."""

from django.http import Http404, HttpResponse
from django.utils import timezone
from django.views.decorators.http import require_safe

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.request import MemberRequest
from triage.desk.sheet_lookup import get_sheet_logged
from triage.jobsheet.access import open_as_member
from triage.jobsheet.contents import serialize_sheet
from triage.jobsheet.formats.calendar import visit_request
from triage.jobsheet.formats.json import sheet_json
from triage.jobsheet.formats.qr import trail_qr
from triage.jobsheet.formats.repair_form import form_text, repair_form
from triage.jobsheet.formats.text import sheet_text
from triage.models import JobSheet, RatingPlatePhoto
from triage.models.audit_entry import AuditAction
from triage.models.firm import Role


@require_safe
@require_role(Role.OWNER, Role.REPAIRER)
def text_file(request: MemberRequest, reference: str) -> HttpResponse:
    sheet = _exported(request, reference)
    return _file(sheet_text(serialize_sheet(sheet)), "text/plain; charset=utf-8", f"{sheet.reference}.txt")


@require_safe
@require_role(Role.OWNER, Role.REPAIRER)
def json_file(request: MemberRequest, reference: str) -> HttpResponse:
    sheet = _exported(request, reference)
    return _file(sheet_json(serialize_sheet(sheet)), "application/json", f"{sheet.reference}.json")


@require_safe
@require_role(Role.OWNER, Role.REPAIRER)
def calendar_file(request: MemberRequest, reference: str) -> HttpResponse:
    sheet = _exported(request, reference)
    return _file(
        visit_request(serialize_sheet(sheet), sheet.firm.email),
        "text/calendar; charset=utf-8",
        f"{sheet.reference}.ics",
    )


@require_safe
@require_role(Role.OWNER, Role.REPAIRER)
def form_file(request: MemberRequest, reference: str) -> HttpResponse:
    sheet = _exported(request, reference)
    form = repair_form(serialize_sheet(sheet), sheet.firm, timezone.localdate())
    if form is None:
        raise Http404
    return _file(form_text(form), "text/plain; charset=utf-8", f"{sheet.reference}-repair-form.txt")


@require_safe
@require_role(*ALL_ROLES)
def code_picture(request: MemberRequest, reference: str) -> HttpResponse:
    drawn = trail_qr(get_sheet_logged(request, reference).summary["check_url"])
    if not drawn:
        raise Http404
    return HttpResponse(drawn, content_type="image/svg+xml")


@require_safe
@require_role(*ALL_ROLES)
def photo(request: MemberRequest, reference: str) -> HttpResponse:
    kept = RatingPlatePhoto.objects.filter(sheet=get_sheet_logged(request, reference)).first()
    if kept is None:
        raise Http404
    response = HttpResponse(bytes(kept.jpeg), content_type="image/jpeg")
    response.headers["X-Content-Type-Options"] = "nosniff"
    return response


def _exported(request: MemberRequest, reference: str) -> JobSheet:
    return open_as_member(request.member, reference, AuditAction.EXPORTED)


def _file(content: str, kind: str, name: str) -> HttpResponse:
    response = HttpResponse(content, content_type=kind)
    response.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return response
