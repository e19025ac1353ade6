"""A step counts once for each answer that was sent, kept page or not; what is no step does not. Counts of several
processes add up, a killed one's too, and no count is lost between threads."""

import os
import subprocess
import sys
from threading import Thread

import pytest
from prometheus_client import values
from prometheus_client.parser import text_string_to_metric_families

from tests.household.every_page import PAGES
from tests.whole_site.project_files import ROOT
from triage.operations.step_metrics import CHANNELS, KINDS, StepCountingMiddleware, count_step, step_metrics
from triage.web.step_header import STEP

QUESTION = PAGES["question"]
# A worker as the server starts one: Django first, then the middleware, which counts what it is asked to.
WORKER = """
import os, signal, sys, django; django.setup()
from prometheus_client import CollectorRegistry, generate_latest
from triage.operations import step_metrics
step_metrics.StepCountingMiddleware(lambda request: None)
for _ in range(int(sys.argv[1])):
    step_metrics.count_step("page", "result")
if sys.argv[2] == "killed":
    os.kill(os.getpid(), signal.SIGKILL)
class All:
    collect = staticmethod(step_metrics.step_metrics)
registry = CollectorRegistry()
registry.register(All())
print(generate_latest(registry).decode())
"""


def counted(client, address, **headers):
    before = totals()
    response = client.get(address, headers=headers)
    return response, {labels: count - before[labels] for labels, count in totals().items() if count != before[labels]}


def totals():
    (family,) = step_metrics()
    return {(sample.labels["channel"], sample.labels["kind"]): sample.value for sample in family.samples}


def worker(directory, steps, ending):
    environment = {**os.environ, "TRIAGE_METRICS_DIR": str(directory)}
    command = [sys.executable, "-c", WORKER, str(steps), ending]
    return subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, text=True)


def test_every_page_of_a_check_says_its_kind(client):
    kinds = {client.get(address).headers[STEP] for address in PAGES.values()}
    assert kinds <= set(KINDS) - {"other"}
    assert kinds >= {"start", "danger", "question", "emergency", "result", "task", "out_of_scope", "costs"}


def test_a_page_that_comes_from_the_shelf_counts_too(client):
    for _ in range(2):
        assert counted(client, QUESTION)[1] == {("page", "question"): 1}


def test_a_step_of_the_api_counts_by_itself(client):
    assert counted(client, QUESTION.replace("/check/", "/api/v1/step"))[1] == {("api", "question"): 1}


def test_what_is_no_step_or_was_not_sent_does_not_count(client):
    assert counted(client, "/no-such-page/")[1] == {}
    assert counted(client, "/health/")[1] == {}
    tag = client.get(QUESTION).headers["ETag"]
    response, more = counted(client, QUESTION, If_None_Match=tag)
    assert (response.status_code, more) == (304, {})


@pytest.mark.parametrize("address", ["/check/?complaint=%00", "/?region=atlantis"])
def test_a_broken_address_is_counted_by_the_page_it_got(client, address):
    response, more = counted(client, address)
    assert more == {("page", response.headers[STEP]): 1}


def test_a_kind_nobody_heard_of_is_counted_as_other():
    before = totals()["api", "other"]
    count_step("api", "brand-new")
    assert totals()["api", "other"] == before + 1


def test_every_kind_has_a_figure_before_anything_happened(tmp_path):
    (family,) = text_string_to_metric_families(worker(tmp_path / "counts", 0, "tells").stdout)
    assert {(sample.labels["channel"], sample.labels["kind"]): sample.value for sample in family.samples} == {
        (channel, kind): 0 for channel in CHANNELS for kind in KINDS
    }


def test_what_a_killed_process_counted_is_still_there_and_counted_once(tmp_path):
    directory = tmp_path / "counts"
    assert worker(directory, 5, "killed").returncode == -9
    for expected in (7, 9):  # two more each time, by a process of its own
        (family,) = text_string_to_metric_families(worker(directory, 2, "tells").stdout)
        assert (family.name, family.type) == ("oven_check_steps", "counter")
        assert [s.value for s in family.samples if s.labels == {"channel": "page", "kind": "result"}] == [expected]
    assert len(list(directory.glob("counter_*.db"))) == 3


def test_a_library_that_was_there_too_early_stops_the_start(settings, tmp_path):
    assert not values.ValueClass._multiprocess
    settings.TRIAGE_METRICS_DIR = str(tmp_path)
    with pytest.raises(Exception, match=r"^prometheus_client was imported before Django's apps were ready\.$"):
        StepCountingMiddleware(lambda _request: None)


def test_threads_lose_no_count():
    before = totals()["page", "question"]

    def work():
        for _ in range(2000):
            count_step("page", "question")

    threads = [Thread(target=work) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert totals()["page", "question"] == before + 8000
