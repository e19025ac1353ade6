"""Figures for a monitoring system. For everybody else there is nothing at this address."""

from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.http import require_safe

from triage.operations.allowed import may_read_metrics
from triage.operations.exposition import CONTENT_TYPE, exposition
from triage.operations.figures import families


@require_safe
def metrics(request: HttpRequest) -> HttpResponse:
    if not may_read_metrics(request):
        raise Http404
    return HttpResponse(exposition(families()), content_type=CONTENT_TYPE, headers={"Cache-Control": "no-store"})
