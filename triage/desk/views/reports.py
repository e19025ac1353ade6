"""Reports that `manage.py compute_reports` writes: how right the chances were, and what the knowledge base holds.

A report proposes; a person accepts with a command, never with a button.
"""

from django.http import Http404, HttpResponse
from django.views.decorators.http import require_safe

from triage.desk.access import require_role, require_site_staff
from triage.desk.layout import render_page
from triage.desk.presenters.calibration import calibration_page
from triage.desk.request import MemberRequest, UserRequest
from triage.knowledge.library import library
from triage.models import Report
from triage.models.firm import Role
from triage.models.report import ReportTopic


@require_safe
@require_role(Role.OWNER, Role.REPAIRER)
def calibration(request: MemberRequest) -> HttpResponse:
    return render_page(request, "calibration", {"page": calibration_page(request.member.firm)})


@require_safe
@require_site_staff
def knowledge(request: UserRequest) -> HttpResponse:
    report, pack = _latest_report(), library().pack
    context = {
        "report": report,
        "contents": report.contents if report else None,
        "version": pack.version,
        "stale": bool(report and report.pack_version != pack.version),
        "counts": (len(pack.faults), len(pack.observations), len(pack.tasks), len(library().regions)),
    }
    return render_page(request, "knowledge", context)


@require_safe
@require_site_staff
def knowledge_tree(_request: UserRequest) -> HttpResponse:
    """The tree as a drawing of its own, to open wide, print and sign."""
    report = _latest_report()
    if report is None:
        raise Http404
    return HttpResponse(report.contents["tree"], content_type="image/svg+xml")


def _latest_report() -> Report | None:
    return Report.objects.filter(topic=ReportTopic.KNOWLEDGE, firm=None).first()
