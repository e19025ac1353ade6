"""The service worker as one classic script: the set it is to keep, then its code with engine, pages and outbox as
`.tools/build` wrote it.

Its bytes change with the set, and that is how a phone learns of a new version.
"""

from hashlib import sha256

from django.http import HttpRequest, HttpResponse
from django.views.decorators.cache import cache_control
from django.views.decorators.http import condition, require_safe

from triage.offline.precache import DIGEST_LENGTH, STATIC, precache_manifest
from triage.offline.views.brotli_response import brotli_response

BUILT = STATIC / "triage" / "offline" / "worker.min.js"


def worker_text() -> str:
    return f'"use strict";\nconst SET = {precache_manifest().as_json()};\n{BUILT.read_text("utf-8")}'


def _tag() -> str:
    """Of every byte of it: a phone must also learn of a worker that was put right while its set stayed the same."""
    return sha256(worker_text().encode()).hexdigest()[:DIGEST_LENGTH]


@require_safe
@cache_control(no_cache=True)
@condition(etag_func=lambda _request: f'"{_tag()}"')
def service_worker(request: HttpRequest) -> HttpResponse:
    response = brotli_response(request, worker_text(), "text/javascript; charset=utf-8")
    response.headers["Service-Worker-Allowed"] = "/"
    return response
