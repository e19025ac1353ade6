"""A step of the check as plain JSON, written alike by both engines (`phone/recording.js`), and where two differ."""

from dataclasses import astuple
from itertools import zip_longest

CHANCES_WITHIN, WEIGHTS_WITHIN = 1e-9, 1e-6
MEASURED = {"chances": CHANCES_WITHIN, "weights": WEIGHTS_WITHIN}


def recorded(check):
    """Everything a check comes to; `chances` of the faults in the pack's order."""
    step, belief = check.step, check.belief
    verdict = getattr(step, "verdict", None)
    return {
        "kind": type(step).__name__,
        "answers": [list(pair) for pair in check.answers.items()],
        "problems": [list(astuple(problem)) for problem in check.problems],
        "asks": [step.observation, step.number, step.max_questions] if hasattr(step, "observation") else [],
        "better": step.better_test.id if getattr(step, "better_test", None) else None,
        "reason": getattr(step, "reason", None),
        "memory": getattr(step, "follow_up_question", None),
        "flags": [flag.id for flag in step.flags]
        if hasattr(step, "flags")
        else [flag.id for flag in getattr(step, "cautions", ())],
        "tasks": [task.id for task in getattr(step, "tasks", ())],
        "band": verdict.band.value if verdict else None,
        "family": verdict.family if verdict else None,
        "causes": [cause.fault for cause in verdict.causes] if verdict else [],
        "alike": list(verdict.alike) if verdict else [],
        "also_check": list(verdict.also_check) if verdict else [],
        "ranking": list(belief.ranking),
        "families": list(belief.families),
        "chances": list(belief.faults.values()),
        "weights": [w.decibans for cause in verdict.causes for w in cause.weights] if verdict else [],
    }


def differences(expected, found):
    """A sentence for each part in which two records of one step differ; none when they agree."""
    return [
        f"{part}: {expected[part]!r} expected, {found.get(part)!r} found"
        for part in expected
        if not _agree(expected[part], found.get(part), MEASURED.get(part))
    ]


def _agree(expected, found, within):
    if within is None:
        return expected == found
    return all(
        isinstance(one, float | int) and isinstance(other, float | int) and abs(one - other) <= within
        for one, other in zip_longest(expected, found or [])
    )
