"""Opens pages as a browser does and looks at each: which addresses, and what every rule and trap finds there."""

import time
from random import Random
from urllib.parse import urlencode

from django.test import Client

from tests.reading_pages import read_page
from tests.safety.page_invariants import CHECK, Shown, broken_page_rules
from tests.safety.result import SearchResult
from tests.safety.traps import sprung_traps
from tests.safety.walking import lines_of, offered_answers, openings, signs_of
from triage.check_pages.presenters.readings.kinds import KINDS
from triage.engine import NONE_OF_THESE, SCREEN, Result, check
from triage.knowledge.library import library

GATE_ANSWERS = ("yes", "no", "unsure", None)


def open_page(region, pairs=(), path=CHECK, task="", headers=None):
    """The page at this address, and what it was made from."""
    profile = library().regions[region]
    response = Client().get(f"{path}?{urlencode([('region', region), *pairs])}", headers=headers)
    assert response.status_code == 200, f"{path} of {pairs} answers {response.status_code}"
    step = check.run_check(library().pack, profile.region, pairs).step
    return Shown(profile, path, tuple(pairs), step, read_page(response), task)


def look_at_page(found, region, pairs=(), path=CHECK, task=""):
    shown = open_page(region, pairs, path, task)
    found.states += 1
    found.kinds[task or (path if path != CHECK else type(shown.step).__name__)] += 1
    found.note([*broken_page_rules(shown), *sprung_traps(shown)], region, pairs)
    return shown


def browse(search, *job):
    """One of the searches below, timed."""
    found, begun = SearchResult(), time.perf_counter()
    SEARCHES[search](found, *job)
    found.seconds = time.perf_counter() - begun
    return found


def first_pages(found, region):
    """The start page, every line of it, the danger page and every way out."""
    pack = library().pack
    look_at_page(found, region, path="/")
    look_at_page(found, region, path="/danger/")
    for opening in openings(pack):
        for line in lines_of(pack, opening):
            look_at_page(found, region, line)
            look_at_page(found, region, [*line, (SCREEN, NONE_OF_THESE)])
    for kind in KINDS:
        reading_pages(found, region, f"/reading/{kind}/")
    for reason in library().texts["en"].start.exits:
        look_at_page(found, region, path=f"/not-this/{reason}/")


def reading_pages(found, region, path):
    """A reading by itself: out of the blue, behind the danger signs and gates, and after every kind of red flag."""
    looked = (SCREEN, NONE_OF_THESE)
    gates = [("cold", "yes"), ("supply-off", "yes")]
    for pairs in ([], [looked], gates, [looked, *gates], [looked, gates[0]]):
        look_at_page(found, region, pairs, path)
    for observation in library().pack.observations.values():
        for option in observation.flags:
            look_at_page(found, region, [looked, *gates, (observation.id, option)], path)


def danger_pages(found, region):
    """Every answer that raises an ending flag, on every kind of supply."""
    for sign in ending_answers(library().pack):
        for supply in (None, *library().pack.variants["supply"].options):
            look_at_page(found, region, [sign, *([("supply", supply)] if supply else [])])


def ending_answers(pack):
    return [
        (observation.id, option)
        for observation in pack.observations.values()
        for option, flag in observation.flags.items()
        if pack.red_flags[flag].level.ends_check
    ]


def pages_of_two_dangers(found, region, supply):
    """Every two red flags at once: the gravest acts first, and the strictest rule on switches holds."""
    signs = ending_answers(library().pack)
    for number, sign in enumerate(signs):
        for other in signs[:number]:
            if other[0] != sign[0]:
                look_at_page(found, region, [sign, other, ("supply", supply)])


def pages_on_the_way(found, region, checks, seed):
    """Every page of checks answered by dice, to the advice and the outcomes of its tasks."""
    pack, dice = library().pack, Random(seed)
    for _ in range(checks):
        pairs = dice.choice(lines_of(pack, dice.choice(openings(pack))))
        while ways := offered_answers(pack, step := look_at_page(found, region, pairs).step):
            if isinstance(step, Result):
                look_at_page(found, region, pairs, f"/check/task/{step.tasks[0].id}/", step.tasks[0].id)
                if dice.random() < 0.6:
                    break
            pairs = tuple({**dict(pairs), **dict([dice.choice(ways)])}.items())


def task_pages(found, region, task, pairs):
    """One task in every combination of answers to its gates: where it is offered, after a sign, and out of the blue."""
    combinations = [()]
    for gate in library().pack.tasks[task].gates:
        combinations = [(*told, (gate, answer)) for told in combinations for answer in GATE_ANSWERS]
    for told in combinations:
        answers = [pair for pair in told if pair[1]]
        look_at_page(found, region, [*pairs, *answers], f"/check/task/{task}/", task)
        if len(answers) == len(told) and {answer for _, answer in answers} <= {"yes"}:
            look_at_page(found, region, [*pairs, signs_of(library().pack)[0], *answers], f"/check/task/{task}/", task)
            look_at_page(found, region, answers, f"/check/task/{task}/", task)


SEARCHES = {
    "first": first_pages,
    "danger": danger_pages,
    "two dangers": pages_of_two_dangers,
    "on the way": pages_on_the_way,
    "task": task_pages,
}
