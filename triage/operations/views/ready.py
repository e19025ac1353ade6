"""Whether this process may be sent visitors; 503 with a sentence where it may not."""

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe

from triage.operations.readiness import obstacle
from triage.operations.views.health import PLAIN

NOT_READY = 503


@require_safe
def ready(_request: HttpRequest) -> HttpResponse:
    reason = obstacle()
    words, status = (f"{reason}\n", NOT_READY) if reason else ("This site is ready.\n", 200)
    return HttpResponse(words, status=status, content_type=PLAIN, headers={"Cache-Control": "no-store"})
