"""Long work shared by both cores, in fresh processes: a browser test before it may have left threads in this one."""

import os
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context

import django

CORES = 2

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "tests.settings")


def in_parallel(work, jobs, prepare=django.setup):
    """`work(*job)` for every job, as they were given; each process prepares itself first."""
    with ProcessPoolExecutor(CORES, get_context("spawn"), initializer=prepare) as pool:
        yield from pool.map(_at_work, [(work, job) for job in jobs])


def _at_work(task):
    work, job = task
    return work(*job)
