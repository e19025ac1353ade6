"""One check, two homes: a page made on the phone has the very bytes of the page the site sends for the same address.

Nothing is taken out before comparing, with one exception that is said in `presenters/summary.js`: what only a repairer
needs is left to the site.
"""

import re
from collections import Counter
from urllib.parse import parse_qsl

import pytest
from playwright.sync_api import Error

from tests.offline.addresses import forged_addresses, tasks_and_outcomes, usual_addresses
from tests.offline.phone_pages import (
    OPEN_OTHER_PACK,
    differences_from_the_site,
    phone_pages,
    request_for,
)
from triage.knowledge.library import library

USUAL = 1450
SEED = 53
MOST_SHOWN = 5
SUMMARY = "/check/summary/"
FOR_THE_REPAIRER = re.compile(r"KIT, beside.*?(?=Knowledge: )", re.DOTALL)
LEFT_TO_THE_SITE = "What to bring and what to measure: open the address below when you’re online.\n\n"


def but_for_the_repairer(request, answer):
    """The site's answer without what is left to the site."""
    if request["path"] == SUMMARY:
        answer["html"] = FOR_THE_REPAIRER.sub(LEFT_TO_THE_SITE, answer["html"])
    return answer


def compare(page, addresses):
    return differences_from_the_site(page, addresses, but_for_the_repairer)


def test_pages_of_usual_checks_are_the_sites_own(page, record_property):
    requests, found, apart = compare(page, [*usual_addresses(USUAL, SEED), *tasks_and_outcomes()])
    record_property("states", len(found))
    assert "\n".join(apart[:MOST_SHOWN]) == ""
    assert_all_was_tried(requests, found)


def test_forged_addresses_get_the_sites_own_pages_and_nothing_of_them_runs(page, record_property):
    _, found, apart = compare(page, forged_addresses())
    record_property("states", len(found))
    assert "\n".join(apart[:MOST_SHOWN]) == ""
    shown = "".join(answer["html"] for answer in found)
    assert "&lt;script&gt;" in shown
    assert re.search(r"<script>|<img|<b>&amp", shown) is None
    assert Counter(answer["status"] for answer in found)[404] > 20


@pytest.mark.django_db
def test_a_page_of_a_firm_and_any_other_address_is_left_to_the_site(page):
    others = ["/desk/", "/call/", "/api/", "/check/costs/", "/check/hand-over/", "/sheet/AB/", "/x"]
    firm = [("/check/", "firm=some-firm"), ("/", "danger=none&firm=f"), ("/check/summary/", "firm=not+one&firm=a")]
    with phone_pages(page) as answer_all:
        answers = answer_all([request_for(path) for path in others] + [request_for(*address) for address in firm])
    assert answers == [None] * len(answers)


def test_texts_of_another_pack_are_not_put_to_this_one(page):
    """They are told apart by their place alone, so a pack of another version would be given wrong words."""
    with phone_pages(page), pytest.raises(Error, match="The pack and the pages are not of one version"):
        page.evaluate(OPEN_OTHER_PACK)


def assert_all_was_tried(requests, found):
    """Every kind of page, open and closed tasks, whole pages and files were among them."""
    shown = [answer["html"] for answer in found]
    for mark in (
        'class="sheet urgent"', 'class="shelves"', 'class="gates"', 'id="outcome"', 'data-lines', "ANSWERS SO FAR",
        'class="ask-small"', "ALSO CHECK", "TOLD TO DO FIRST", "That put it right", 'class="memory"', "<!doctype html>",
        'class="sheet brief"', "could not be used", "We have no prices",
    ):  # fmt: skip
        assert any(mark in text for text in shown), mark
    regions = {told for request in requests for name, told in parse_qsl(request["query"]) if name == "region"}
    assert regions >= set(library().regions)
