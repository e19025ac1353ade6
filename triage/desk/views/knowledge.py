"""What the pack knows, with pictures, for who keeps it. `manage.py reckon` works it out beforehand."""

from django.http import Http404, HttpResponse
from django.views.decorators.http import require_safe

from triage.desk.access import require_site_staff
from triage.desk.layout import DeskRequest, render_page
from triage.knowledge.library import library
from triage.models import Reckoning
from triage.models.reckoning import Topic


@require_safe
@require_site_staff
def knowledge(request: DeskRequest) -> HttpResponse:
    report, pack = _latest_report(), library().pack
    context = {
        "kept": report,
        "told": report.contents if report else None,
        "version": pack.version,
        "stale": bool(report and report.pack_version != pack.version),
        "counts": (len(pack.faults), len(pack.observations), len(pack.tasks), len(library().regions)),
    }
    return render_page(request, "knowledge", context)


@require_safe
@require_site_staff
def knowledge_tree(_request: DeskRequest) -> HttpResponse:
    """The tree as a drawing of its own, to open wide, print and sign."""
    kept = _latest_report()
    if kept is None:
        raise Http404
    return HttpResponse(kept.contents["tree"], content_type="image/svg+xml")


def _latest_report() -> Reckoning | None:
    return Reckoning.objects.filter(topic=Topic.KNOWLEDGE, firm=None).first()
