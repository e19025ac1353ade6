"""Whatever stands in its address, the check answers with a page; and what was answered well is kept among nonsense."""

from random import Random
from urllib.parse import parse_qsl, quote

from django.test import Client

from tests.household.checks_done import ENGLAND
from tests.reading_pages import read_page
from tests.safety.parallel import in_parallel
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, parse_answers
from triage.knowledge.library import library

EACH, SHARES = 2500, 10
MAX_ANSWERS, MAX_NONSENSE, MAX_CHARACTERS = 12, 8, 30
# Characters that mean something in an address, in markup, to a parser of either, or that come in unusual lengths.
SIGNS = "&=+%#?;/<>\"'\\\0\n\r\t é€🔥\u200b\u202e\ufeff\ud7ff\ue000"
PLAIN = "abcxyz0189-_.~ "
LAST_CHARACTER, SURROGATES = 0x10FFFF, range(0xD800, 0xE000)


def odd_text(dice):
    """Up to thirty characters, of a kind that may be harmless or not."""
    return "".join(odd_character(dice) for _ in range(dice.randrange(MAX_CHARACTERS + 1)))


def odd_character(dice):
    if dice.random() < 0.7:
        return dice.choice(dice.choice((SIGNS, PLAIN)))
    number = dice.randrange(LAST_CHARACTER + 1)
    return chr(number) if number not in SURROGATES else "\ufffd"


def good_answers(pack, dice, most):
    options = [(o.id, option) for o in pack.observations.values() for option in (*o.options, CANT_TELL)]
    pairs = [dice.choice(options) for _ in range(dice.randrange(most + 1))]
    return [pair if dice.random() < 0.9 else (SCREEN, NONE_OF_THESE) for pair in pairs]


def nonsense(pack, dice):
    name = "region" if dice.random() < 0.3 else odd_text(dice)
    return (f"{name}?" if name in pack.observations or name == SCREEN else name), odd_text(dice)


def query_of(pairs):
    return "&".join(f"{quote(name)}={quote(answer)}" for name, answer in pairs)


def carried(page):
    """The answers the page carries on."""
    query = page.select("nav.way-out a")[0].attributes["href"].partition("?")[2]
    return {name: answer for name, answer in parse_qsl(query) if name != "region"}


def pages_among_nonsense(number, seed):
    """Addresses whose page did not carry on the good answers alone, of `number` mixed with nonsense."""
    pack, dice, client, wrong = library().pack, Random(f"nonsense {seed}"), Client(), []
    for _ in range(number):
        answers = good_answers(pack, dice, MAX_ANSWERS)
        mixed = list(answers)
        for _ in range(dice.randrange(MAX_NONSENSE + 1)):
            mixed.insert(dice.randint(0, len(mixed)), nonsense(pack, dice))
        response = client.get(f"/check/?{query_of(mixed)}")
        if response.status_code != 200 or carried(read_page(response)) != parse_answers(pack, answers).answers:
            wrong.append(query_of(mixed))
    return wrong


def pages_of_broken_queries(number, seed):
    """Query strings that got no page with one heading, of `number` cut short, filled up or written over."""
    pack, dice, client, wrong = library().pack, Random(f"broken {seed}"), Client(), []
    for _ in range(number):
        query = query_of([("region", ENGLAND), *good_answers(pack, dice, MAX_ANSWERS // 2)])
        noise = "".join(chr(dice.randrange(256)) for _ in range(dice.randrange(81)))
        at = dice.randint(0, len(query))
        rest = dice.choice(("", query[at:], query[at + len(noise) :]))
        response = client.get("/check/", QUERY_STRING=query[:at] + noise + rest)
        if response.status_code != 200 or len(read_page(response).select("h1")) != 1:
            wrong.append(query[:at] + noise + rest)
    return wrong


def all_wrong(search, record_property):
    record_property("states", EACH)
    jobs = [(EACH // SHARES, seed) for seed in range(SHARES)]
    return [address for wrong in in_parallel(search, jobs) for address in wrong]


def test_good_answers_among_nonsense_are_kept(record_property):
    assert all_wrong(pages_among_nonsense, record_property)[:5] == []


def test_no_query_string_breaks_the_check(record_property):
    assert all_wrong(pages_of_broken_queries, record_property)[:5] == []
