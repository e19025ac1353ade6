"""Walks the check as people can: every line of the start page, the danger page, every answer to what is asked.

`walk_all` visits, in one region, every state within `depth` answers of the danger page: from each line of the start
page the danger page with "none of these" and with each sign, then each option of each question asked, "can't tell"
among them, and each outcome of each task offered. After a sign on the danger page each answer from memory is one more
answer. A sign ticked later is an edge too: all of them at the first question, one per state in turn after it. A state
is a set of answers, as the engine's reading does not depend on their order (`tests/engine/test_answers.py`), so equal
sets are visited once.

The whole tree is far too large (twelve questions of about five answers), so three searches complete each other. This
walk leaves out nothing near the start, where all questions compete. `walk_at_random` follows whole checks to their
end, so deep states are met as often as people meet them. Forged trails (`forging.py`) need no path at all. That is
enough because a step is computed from the set of answers alone, with no memory of the path: flags and gates are
looked up one answer at a time, and only beliefs depend on many answers at once.

`python -m tests.safety.walking 4 gb-eng` walks deeper and prints the figures.
"""

import sys
import time
import zlib
from contextlib import contextmanager
from random import Random

from tests.safety.invariants import broken_rules
from tests.safety.places import region_classes
from tests.safety.result import SearchResult, all_together
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Emergency, Question, Result, advice
from triage.engine import check as engine_check
from triage.engine.pack import OPENING
from triage.knowledge.library import library

DANGER_PAGE, FIRST_QUESTION = -1, 0
GOES_ON, STOPS_AT_ADVICE = 0.97, 0.6


def look_at(found, pack, region, pairs):
    """The step after `pairs`, every rule checked on it and noted in `found`."""
    made = engine_check.run_check(pack, region, pairs)
    found.states += 1
    found.kinds[type(made.step).__name__] += 1
    found.note(broken_rules(pack, region, pairs, made, turn_of(pairs)), region.id, pairs)
    return made.step


def turn_of(pairs):
    """A number that is the same for the same answers in every run, to take turns by."""
    return zlib.crc32(repr(sorted(pairs)).encode())


def signs_of(pack):
    return [sign for flag in pack.red_flags.values() for sign in flag.signs]


def openings(pack):
    return list(dict.fromkeys(complaint.option for complaint in pack.complaints))


def lines_of(pack, opening):
    """The lines of the start page that open with this complaint, as trails."""
    return [((OPENING, c.option), *c.answers.items()) for c in pack.complaints if c.option == opening]


def walk_from(region, opening, depth, remembered=True):
    """Every state within `depth` answers of the danger page, from the lines of one complaint.

    `remembered`: whether answers from memory after a sign on the danger page are walked too.
    """
    pack, region, found, begun = library().pack, region_named(region), SearchResult(), time.perf_counter()
    layer = {frozenset(line): line for line in lines_of(pack, opening)}
    seen = set(layer)
    for level in range(DANGER_PAGE, depth + 1):
        following = {}
        for pairs in layer.values():
            step = look_at(found, pack, region, pairs)
            for name, answer in ways_on(pack, pairs, step, level, remembered) if level < depth else ():
                state = {**dict(pairs), name: answer}
                found.edges += 1
                following.setdefault(frozenset(state.items()), tuple(state.items()))
        layer = {state: pairs for state, pairs in following.items() if state not in seen}
        seen |= set(layer)
    found.seconds = time.perf_counter() - begun
    return found


def ways_on(pack, pairs, step, level, remembered):
    """The answers the page of `step` offers, and signs of danger ticked now."""
    if isinstance(step, Emergency):
        ways = offered_answers(pack, step) if remembered and level <= FIRST_QUESTION else []
    else:
        signs = signs_of(pack)
        ticked = signs if level <= FIRST_QUESTION else [signs[turn_of(pairs) % len(signs)]]
        ways = [*offered_answers(pack, step), *ticked]
    return [way for way in dict.fromkeys(ways) if way not in pairs]


def offered_answers(pack, step):
    """The answers to what is asked, or to how an offered task went."""
    if isinstance(step, Result):
        return [(task.outcome, option) for task in step.tasks for option in pack.observations[task.outcome].options]
    asked = step.observation if isinstance(step, Question) else getattr(step, "follow_up_question", None)
    if asked is None:
        return []
    if asked == SCREEN:
        return [(SCREEN, NONE_OF_THESE)]
    return [(asked, option) for option in (*pack.observations[asked].options, CANT_TELL)]


def walk_at_random(region, checks, seed):
    """Whole checks to their end, each answer thrown by dice, every step on the way looked at."""
    pack, region, found, begun = library().pack, region_named(region), SearchResult(), time.perf_counter()
    dice = Random(seed)
    for _ in range(checks):
        pairs = dice.choice(lines_of(pack, dice.choice(openings(pack))))
        while ways := offered_answers(pack, step := look_at(found, pack, region, pairs)):
            if isinstance(step, Result) and dice.random() < STOPS_AT_ADVICE:
                break
            name, answer = dice.choice(ways if dice.random() < GOES_ON else signs_of(pack))
            found.edges += 1
            pairs = tuple({**dict(pairs), name: answer}.items())
    found.seconds = time.perf_counter() - begun
    return found


def region_named(region):
    """The one object for a region: the engine keeps a model for each that it meets."""
    return library().regions[region].region


def walk_all(region, depth):
    jobs = [(region, opening, depth) for opening in openings(library().pack)]
    return all_together(walk_from, jobs, conditions=without_explanations)


@contextmanager
def without_explanations():
    """Leaves out what each answer weighs, a third of the time of a step: no rule looks at it."""
    kept = advice.weights_of_evidence
    advice.weights_of_evidence = lambda _model, _answers, faults: dict.fromkeys(faults, ())
    try:
        yield
    finally:
        advice.weights_of_evidence = kept


def main(depth="3", *regions):
    """Prints what a walk of this depth meets, in each class of regions or in those named."""
    for found in region_classes():
        if not regions or found.region.id in regions:
            begun = time.perf_counter()
            walked = walk_all(found.region.id, int(depth))
            print(found.members, walked, f"{time.perf_counter() - begun:.0f} s")  # noqa: T201


if __name__ == "__main__":
    main(*sys.argv[1:])
