"""Long work shared by all processors, in fresh processes: a browser test before it may have left threads in this one.

Where tests already run one for each processor, a search does its work where it is: more processes would only wait.
"""

import os
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ProcessPoolExecutor
from contextlib import AbstractContextManager, nullcontext
from functools import cache
from multiprocessing import get_context
from typing import Any

import django

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "tests.settings")

Conditions = Callable[[], AbstractContextManager[Any]]


def in_parallel(work: Callable, jobs: Iterable[tuple], conditions: Conditions = nullcontext) -> Iterator:
    """`work(*job)` for every job, as they were given, under the same conditions wherever it is done."""
    if "PYTEST_XDIST_WORKER" in os.environ:
        return _here(work, jobs, conditions)
    return _pool(conditions).map(_at_work, [(work, job) for job in jobs])


def _here(work: Callable, jobs: Iterable[tuple], conditions: Conditions) -> Iterator:
    with conditions():
        yield from [work(*job) for job in jobs]


@cache
def _pool(conditions: Conditions) -> ProcessPoolExecutor:
    """The processes stay for the next search under these conditions: each takes seconds to load everything."""
    return ProcessPoolExecutor(mp_context=get_context("spawn"), initializer=_prepare, initargs=(conditions,))


def _prepare(conditions: Conditions) -> None:
    django.setup()
    conditions().__enter__()


def _at_work(task: tuple[Callable, tuple]) -> Any:
    work, job = task
    return work(*job)
