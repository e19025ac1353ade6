"""The firm is offered where a visit makes sense, and never where people have to leave."""

import pytest

from tests.firm_builders import make_firm
from tests.household.checks_done import answers_of, at, links_of, open_page
from tests.household.every_page import PAGES
from triage.check_pages.request import read_check_request
from triage.household.presenters.offer import offer_of

pytestmark = pytest.mark.django_db
ELEMENT = answers_of("fan-element-open", "no-heat")
OFFERED = {"advice", "advice with a caution", "make safe"}
WHOLE_CHECKS = {"advice", "advice with a caution", "make safe", "gas", "put right", "question", "not electric"}


@pytest.mark.parametrize("name", sorted(WHOLE_CHECKS))
def test_where_it_is_offered(client, name):
    firm = make_firm()
    words = f"Send this to {firm.name}"
    links = links_of(open_page(client, f"{PAGES[name]}&firm={firm.slug}"))
    assert any(words in link for link in links) == (name in OFFERED)


def test_without_a_firm_nothing_is_offered(client):
    assert open_page(client, PAGES["advice"]).select("main .offer") == []


def test_it_carries_the_whole_check(rf):
    firm = make_firm()
    offer = offer_of(read_check_request(rf.get(at("/check/", {"firm": firm.slug, **ELEMENT}))))
    assert offer.firm == firm.name
    assert offer.band == "qualified"
    assert offer.href == at("/check/hand-over/", {"firm": firm.slug, **ELEMENT})
    assert offer.address == "http://testserver" + at("/check/", {"firm": firm.slug, **ELEMENT})
