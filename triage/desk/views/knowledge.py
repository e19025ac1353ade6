"""What the pack knows, with pictures, for who keeps it. `manage.py reckon` works it out beforehand."""

from django.http import Http404, HttpResponse
from django.views.decorators.http import require_safe

from triage.desk.access import site_staff
from triage.desk.showing import DeskRequest, show
from triage.knowledge.library import library
from triage.models import Reckoning
from triage.models.reckoning import Topic


@require_safe
@site_staff
def knowledge(request: DeskRequest) -> HttpResponse:
    kept, pack = _newest(), library().pack
    context = {
        "kept": kept,
        "told": kept.contents if kept else None,
        "version": pack.version,
        "stale": bool(kept and kept.pack_version != pack.version),
        "counts": (len(pack.faults), len(pack.observations), len(pack.tasks), len(library().regions)),
    }
    return show(request, "knowledge", context)


@require_safe
@site_staff
def knowledge_tree(_request: DeskRequest) -> HttpResponse:
    """The tree as a drawing of its own, to open wide, print and sign."""
    kept = _newest()
    if kept is None:
        raise Http404
    return HttpResponse(kept.contents["tree"], content_type="image/svg+xml")


def _newest() -> Reckoning | None:
    return Reckoning.objects.filter(topic=Topic.KNOWLEDGE, firm=None).first()
