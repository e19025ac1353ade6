"""Whether this process answers at all. It touches nothing, so that a slow database never gets a web worker killed."""

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe

PLAIN = "text/plain; charset=utf-8"


@require_safe
def health(_request: HttpRequest) -> HttpResponse:
    return HttpResponse("This process is alive.\n", content_type=PLAIN, headers={"Cache-Control": "no-store"})
