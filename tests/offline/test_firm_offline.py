"""A check done for a firm, made on the phone while it is offline: the firm goes along in every link and form."""

import re

import pytest

from tests.firm_builders import make_firm
from tests.household.every_page import PAGES
from tests.offline.phone_pages import answer_of_the_site, phone_pages, request_for

pytestmark = pytest.mark.django_db

OFFER = re.compile(r'\s*<section class="offer".*?</section>\s*', re.DOTALL)
NAMES = ("start", "danger", "question", "make safe", "gas", "advice", "put right", "task open", "reading")


@pytest.fixture
def firm():
    return make_firm(slug="hearth", region="gb-eng")


def addresses(firm):
    for name in NAMES:
        path, _, query = PAGES[name].partition("?")
        yield path, f"{query}&firm={firm.slug}".lstrip("&")


def test_its_pages_are_the_sites_own_but_for_the_firms_name(client, page, firm):
    requests = [request_for(*address, offline=True) for address in addresses(firm)]
    with phone_pages(page) as answer_all:
        found = answer_all(requests)
    for request, answer in zip(requests, found, strict=True):
        expected, html = answer_of_the_site(client, request)["html"], answer["html"]
        assert OFFER.sub("", html) == OFFER.sub("", expected), request
        assert form_addresses(html) == form_addresses(expected)
    assert sum(bool(form_addresses(answer["html"])) for answer in found) == 2


def form_addresses(html):
    """Where a visit is asked for."""
    return re.findall(r'href="(/check/hand-over/[^"]*)"', html)
