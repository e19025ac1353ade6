"""Trails that lead to a task, found by answering as the owner of an oven with a fault it helps with would."""

from functools import cache

from tests.safety.walking import lines_of, openings, region_named
from triage.engine import NONE_OF_THESE, SCREEN, Question, Result, compile_model, infer_belief, parse_answers, run_check
from triage.knowledge.library import library

LONGEST = 30


@cache
def trail_to(task, region):
    """The first trail found after which `task` is offered in `region`, or None where it never is."""
    for fault in (fault for fault in library().pack.faults if fault in library().pack.tasks[task].helps):
        for opening in likely_openings(fault, region):
            for caution in ([], [("trip-device", "breaker"), ("trip-reset", "not-tried")]):
                pairs = answered_for(
                    fault, [*lines_of(library().pack, opening)[0], (SCREEN, NONE_OF_THESE), *caution], region
                )
                step = run_check(library().pack, region_named(region), pairs).step
                if isinstance(step, Result) and any(offered.id == task for offered in step.tasks):
                    return tuple(pairs)
    return None


def likely_openings(fault, region):
    """The three complaints that speak most for a fault."""
    chances = {
        opening: chance_of(fault, lines_of(library().pack, opening)[0], region) for opening in openings(library().pack)
    }
    return sorted(chances, key=lambda opening: -chances[opening])[:3]


def chance_of(fault, pairs, region):
    model = compile_model(library().pack, region_named(region))
    return infer_belief(model, parse_answers(library().pack, pairs).answers).faults[fault]


def answered_for(fault, pairs, region):
    """The check from here to its end, each answer the one that speaks most for the fault and raises no flag."""
    pack = library().pack
    for _ in range(LONGEST):
        step = run_check(pack, region_named(region), pairs).step
        if not isinstance(step, Question):
            break
        asked = pack.observations[step.observation]
        options = [option for option in asked.options if option not in asked.flags]
        best = max(options, key=lambda option: chance_of(fault, [*pairs, (asked.id, option)], region))
        pairs = [*pairs, (asked.id, best)]
    return pairs
