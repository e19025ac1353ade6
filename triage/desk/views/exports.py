"""Everything a firm may take with it: job sheets as CSV, outcomes as open data, and for learning."""

from django.http import HttpResponse
from django.utils import timezone
from django.views.decorators.http import require_safe

from triage.desk.access import require_role
from triage.desk.layout import render_page
from triage.desk.outcome_stats import outcomes_file, outcomes_of, training_outcomes
from triage.desk.presenters.sheet_table import sheets_csv
from triage.desk.request import MemberRequest
from triage.jobsheet.access import sheets_of
from triage.jobsheet.formats.open_repair import outcomes_csv
from triage.knowledge.library import library
from triage.models import AuditEntry, Firm
from triage.models.audit_entry import Actor, AuditAction
from triage.models.firm import Role


@require_safe
@require_role(Role.OWNER)
def exports(request: MemberRequest) -> HttpResponse:
    member = request.member
    counts = {"sheets": sheets_of(member).count(), "outcomes": outcomes_of(member.firm).count()}
    return render_page(request, "exports", counts)


@require_safe
@require_role(Role.OWNER)
def sheets_table(request: MemberRequest) -> HttpResponse:
    """Every job sheet that is not erased; each gets an audit line, as if it had been opened."""
    member = request.member
    sheets = list(sheets_of(member).select_related("outcome"))
    now = timezone.now()
    AuditEntry.objects.bulk_create(
        AuditEntry(sheet=sheet, actor=Actor.MEMBER, member=member, action=AuditAction.EXPORTED, at=now)
        for sheet in sheets
    )
    return _file(request, sheets_csv(sheets), "text/csv; charset=utf-8", "job-sheets.csv")


@require_safe
@require_role(Role.OWNER)
def open_repair_table(request: MemberRequest) -> HttpResponse:
    content = outcomes_csv(outcomes_of(_firm(request)))
    return _file(request, content, "text/csv; charset=utf-8", "open-repair.csv")


@require_safe
@require_role(Role.OWNER)
def outcomes_yaml(request: MemberRequest) -> HttpResponse:
    pack = library().pack
    content = outcomes_file(training_outcomes(outcomes_of(_firm(request)), pack), pack)
    return _file(request, content, "application/yaml; charset=utf-8", "outcomes.yaml")


def _firm(request: MemberRequest) -> Firm:
    return request.member.firm


def _file(request: MemberRequest, content: str, kind: str, name: str) -> HttpResponse:
    response = HttpResponse(content, content_type=kind)
    response.headers["Content-Disposition"] = f'attachment; filename="{_firm(request).slug}-{name}"'
    return response
