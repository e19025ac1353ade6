"""Counts of several processes add up, a killed one's too, and no count is lost between threads."""

import os
import subprocess
import sys
from threading import Thread

import pytest

from tests.whole_site.project_files import ROOT
from triage.operations.step_counts import ENDING, SIZE, StepCounts, count_step, counts_by_worker

ANOTHER = """
import os, signal
from django.conf import settings
settings.configure(TRIAGE_METRICS_FOLDER=os.environ["FOLDER"])
from triage.operations.step_counts import count_step
for _ in range(5):
    count_step("page", "advice")
os.kill(os.getpid(), signal.SIGKILL)
"""


@pytest.fixture
def folder(settings, tmp_path):
    settings.TRIAGE_METRICS_FOLDER = str(tmp_path / "counts")
    return tmp_path / "counts"


def total(way, kind):
    return sum(counts[way, kind] for _worker, counts in counts_by_worker())


def test_a_process_without_a_folder_knows_itself():
    before = total("page", "question")
    count_step("page", "question")
    ((worker, _counts),) = counts_by_worker()
    assert worker.startswith(f"{os.getpid()}-")
    assert total("page", "question") == before + 1


def test_a_kind_nobody_heard_of_is_counted_as_other():
    before = total("api", "other")
    count_step("api", "brand-new")
    assert total("api", "other") == before + 1


def test_what_a_killed_process_counted_is_still_there(folder):
    count_step("page", "advice")
    ended = subprocess.run([sys.executable, "-c", ANOTHER], cwd=ROOT, env={**os.environ, "FOLDER": str(folder)})
    assert ended.returncode == -9
    assert len(list(counts_by_worker())) == 2
    assert total("page", "advice") == 6


def test_a_file_of_another_release_is_left_alone(folder):
    count_step("page", "start")
    (folder / "7-old.steps-00000000").write_bytes(b"\xff" * SIZE)
    (folder / f"8-half{ENDING}").write_bytes(b"\xff")
    assert [counts["page", "start"] for _worker, counts in counts_by_worker()] == [1]


def test_threads_lose_no_count():
    counts = StepCounts("none")

    def work():
        for _ in range(2000):
            counts.add("page", "question")

    threads = [Thread(target=work) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert counts.read()["page", "question"] == 8000
