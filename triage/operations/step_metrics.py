"""Counts every step that is answered, by the header it carries. An answer of "not modified" carries none.

With a directory (TRIAGE_METRICS_DIR) prometheus-client keeps each process' counts in a file of its own in it, so
whichever process is asked adds up all of them on this host. The file of a process that was killed stays: a counter
must not fall. Without a directory a process knows itself alone. A question page asks no database.
"""

from collections.abc import Callable, Iterable
from pathlib import Path

from django.core.exceptions import ImproperlyConfigured
from django.http import HttpRequest
from django.http.response import HttpResponseBase
from prometheus_client import Counter, disable_created_metrics, values
from prometheus_client.metrics_core import Metric
from prometheus_client.multiprocess import MultiProcessCollector

from triage.conf import METRICS_DIR
from triage.web.step_header import STEP

API = "/api/"
CHANNELS = ("page", "api")
KINDS = ("start", "danger", "question", "emergency", "result", "task", "reading", "out_of_scope", "costs", "other")

disable_created_metrics()  # a process' own start says nothing of all of them
STEPS = Counter("oven_check_steps", "Pages and API steps answered, by kind.", ("channel", "kind"), registry=None)


class StepCountingMiddleware:
    def __init__(self, get_response: Callable[[HttpRequest], HttpResponseBase]) -> None:
        self.get_response = get_response
        directory = METRICS_DIR.value()
        if directory != METRICS_DIR.default:
            if not values.ValueClass._multiprocess:
                raise ImproperlyConfigured("prometheus_client was imported before Django's apps were ready.")
            Path(directory).mkdir(parents=True, exist_ok=True)
        for channel in CHANNELS:  # each has a figure from the start, for an alarm to watch
            for kind in KINDS:
                STEPS.labels(channel, kind)

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        response = self.get_response(request)
        kind = response.headers.get(STEP)
        if kind:
            count_step("api" if request.path_info.startswith(API) else "page", kind)
        return response


def count_step(channel: str, kind: str) -> None:
    STEPS.labels(channel, kind if kind in KINDS else "other").inc()


def step_metrics() -> Iterable[Metric]:
    """The counts of every process of this host that can be seen."""
    directory = METRICS_DIR.value()
    return STEPS.collect() if directory == METRICS_DIR.default else MultiProcessCollector(None, directory).collect()
