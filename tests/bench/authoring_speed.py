"""How many made-up checks the author's bench gets through in a minute, with every processor of this machine.

A check is drawn, asked to its end and judged; the costs of the pack's numbers are not weighed here. Starting the worker
processes is part of the time. A check takes many steps of the engine, so beside it stands what one step costs here
when nothing is kept.
"""

import os
from statistics import median
from time import perf_counter

from tests.bench.engine_speed import milliseconds
from tests.bench.sessions import trails
from triage.authoring.simulation import World, simulate
from triage.engine import run_check


def authoring_speed(pack, region, count):
    """Checks per minute; milliseconds of all processors per check and of one step, and their ratio."""
    start = perf_counter()
    found = simulate(pack, region, {}, World(), count, seed=1)
    seconds = perf_counter() - start
    processors = os.cpu_count() or 1
    steps = milliseconds(
        lambda trail: run_check(pack, region, trail).step, trails(pack, region, min(count, 200), "steps")
    )
    check = 1000 * processors * seconds / count
    return {
        "checks": found.figures.cases,
        "processors": processors,
        "per minute": 60 * count / seconds,
        "check": check,
        "step": median(steps),
        "check / step": check / median(steps),
    }
