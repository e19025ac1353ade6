"""One step of the engine on the whole pack, pairs of faults included, beside the reference library's posterior.

Warm-up runs other trails than the measured ones. What stays cached between steps, here as on a server: the compiled
model of pack and region, and `weigh` (one condition's table under one likelihood, 4096 kept). Nothing is kept per
trail. pyAgrum computes in C++ and only the posterior; `advise` also reads the trail, judges the red flags, and
chooses the next question or writes the advice.
"""

import tempfile
from pathlib import Path
from statistics import median
from time import perf_counter

from tests.bench.sessions import trails
from tests.published.reference_library import chances_by_library, evidence_of, inference_on, read_by_library
from triage.engine import Emergency, Question, Result, compile_model, infer_belief, parse_answers, run_check

KINDS = {"ask": Question, "advice": Result, "make safe": Emergency}


def milliseconds(action, items):
    """How long `action` takes on each item."""
    times = []
    for item in items:
        start = perf_counter()
        action(item)
        times.append(1000 * (perf_counter() - start))
    return times


def engine_speed(pack, region, count, warm_up):
    """Medians in milliseconds and their ratios."""
    model = compile_model(pack, region)
    for trail in trails(pack, region, warm_up, "warm-up"):
        assert run_check(pack, region, trail).step
    measured = trails(pack, region, count, "measured")
    steps = milliseconds(lambda trail: run_check(pack, region, trail).step, measured)
    answers = [parse_answers(pack, trail).answers for trail in measured]
    beliefs = milliseconds(lambda known: infer_belief(model, known), answers)
    with tempfile.TemporaryDirectory() as folder:
        inference = inference_on(read_by_library(model, Path(folder)))
    evidence = [evidence_of(model, known) for known in answers]
    library = milliseconds(lambda known: chances_by_library(inference, known), evidence)
    by_kind = {
        name: [
            ms
            for ms, trail in zip(steps, measured, strict=True)
            if isinstance(run_check(pack, region, trail).step, kind)
        ]
        for name, kind in KINDS.items()
    }
    return {
        "hypotheses": len(model.hypotheses),
        "trails": len(measured),
        "advise": median(steps),
        "advise, slowest of twenty": sorted(steps)[int(0.95 * len(steps))],
        **{f"advise, {name}": median(times) for name, times in by_kind.items() if times},
        "believe": median(beliefs),
        "library": median(library),
        "advise / library": median(steps) / median(library),
        "believe / library": median(beliefs) / median(library),
    }
