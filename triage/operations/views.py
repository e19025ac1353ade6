"""Pages for whoever runs the site: alive, ready, and the figures. No cache may keep one."""

from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.http import require_safe
from prometheus_client.exposition import CONTENT_TYPE_PLAIN_0_0_4

from triage.operations.metrics import exposition
from triage.operations.metrics_auth import may_read_metrics
from triage.operations.readiness import not_ready_reason

PLAIN = "text/plain; charset=utf-8"
NO_STORE = {"Cache-Control": "no-store"}


@require_safe
def health(_request: HttpRequest) -> HttpResponse:
    """Whether this process answers at all. It touches nothing, so a slow database never gets a web worker killed."""
    return HttpResponse("This process is alive.\n", content_type=PLAIN, headers=NO_STORE)


@require_safe
def ready(_request: HttpRequest) -> HttpResponse:
    """Whether this process may be sent visitors; 503 with a sentence where it may not."""
    reason = not_ready_reason()
    text, status = (f"{reason}\n", 503) if reason else ("This site is ready.\n", 200)
    return HttpResponse(text, status=status, content_type=PLAIN, headers=NO_STORE)


@require_safe
def metrics(request: HttpRequest) -> HttpResponse:
    """Figures for a monitoring system. For everybody else there is nothing at this address."""
    if not may_read_metrics(request):
        raise Http404
    return HttpResponse(exposition(), content_type=CONTENT_TYPE_PLAIN_0_0_4, headers=NO_STORE)
