"""The service worker as one classic script: the set it is to keep, the outbox, and the worker's own code, minified by
`python -m tests.offline`.

Its bytes change with the set, and that is how a phone learns of a new version. The block around it keeps its names
apart from those of the engine.
"""

from hashlib import sha256

from django.http import HttpRequest, HttpResponse
from django.views.decorators.cache import cache_control
from django.views.decorators.http import condition, require_safe

from triage.offline.classic_script import DIGEST_LENGTH, OFFLINE
from triage.offline.precache import phone_set

OWN = OFFLINE / "worker.min.js"


def worker_text() -> str:
    return f'"use strict";\n{{\nconst SET = {phone_set().as_json()};\n{OWN.read_text("utf-8")}}}\n'


def _tag() -> str:
    """Of every byte of it: a phone must also learn of a worker that was put right while its set stayed the same."""
    return sha256(worker_text().encode()).hexdigest()[:DIGEST_LENGTH]


@require_safe
@cache_control(no_cache=True)
@condition(etag_func=lambda _request: f'"{_tag()}"')
def service_worker(_request: HttpRequest) -> HttpResponse:
    response = HttpResponse(worker_text(), content_type="text/javascript; charset=utf-8")
    response.headers["Service-Worker-Allowed"] = "/"
    return response
