"""The service worker as one classic script: the set it is to keep, the outbox, and the worker's own code.

Its bytes change with the set, and that is how a phone learns of a new version. The block around it keeps its names
apart from those of the engine.
"""

from pathlib import Path

from django.http import HttpRequest, HttpResponse
from django.views.decorators.cache import cache_control
from django.views.decorators.http import condition, require_safe

import triage
from triage.offline.precache import phone_set

SOURCES = Path(triage.__file__).parent / "static" / "triage" / "offline"


def worker_text() -> str:
    own = "".join((SOURCES / name).read_text("utf-8") for name in ("outbox.js", "worker.js")).replace("\nexport ", "\n")
    return f'"use strict";\n{{\nconst SET = {phone_set().as_json()};\n{own}}}\n'


@require_safe
@cache_control(no_cache=True)
@condition(etag_func=lambda _request: f'"{phone_set().version}"')
def service_worker(_request: HttpRequest) -> HttpResponse:
    response = HttpResponse(worker_text(), content_type="text/javascript; charset=utf-8")
    response.headers["Service-Worker-Allowed"] = "/"
    return response
