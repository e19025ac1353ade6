"""Long work shared by all processors, in fresh processes: a browser test before it may have left threads in this one.

The processes stay for the next search that prepares them alike, as each takes seconds to load everything. Where tests
already run one for each processor, a search gets one process of its own.
"""

import os
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from functools import cache
from multiprocessing import get_context

import django

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "tests.settings")


def in_parallel(work, jobs, prepare=django.setup):
    """`work(*job)` for every job, as they were given; each process prepares itself first."""
    return _pool(prepare).map(_at_work, [(work, job) for job in jobs])


@cache
def _pool(prepare: Callable[[], None]) -> ProcessPoolExecutor:
    workers = int(os.environ.get("PYTEST_XDIST_WORKER_COUNT", 1))
    return ProcessPoolExecutor(max((os.cpu_count() or 1) // workers, 1), get_context("spawn"), initializer=prepare)


def _at_work(task):
    work, job = task
    return work(*job)
