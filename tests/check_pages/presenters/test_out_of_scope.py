"""Whoever has something else gets a kind way out, and a smell of gas gets only what helps."""

import pytest

from triage.check_pages.presenters.out_of_scope import out_of_scope_page
from triage.knowledge.library import library

EXITS = library().texts_for("gb-eng").start.exits


@pytest.mark.parametrize("reason", EXITS)
def test_each_way_out_says_what_and_who(check_request, reason):
    page = out_of_scope_page(check_request("/?region=gb-eng&complaint=no-heat"), reason)
    assert page.heading == EXITS[reason].heading
    assert page.lines
    assert page.contact
    assert page.no_switches == (reason == "gas-smell")


def test_a_smell_of_gas_shows_the_numbers_and_no_answers(check_request):
    page = out_of_scope_page(check_request("/?region=gb-eng&complaint=no-heat"), "gas-smell")
    assert [number.href for number in page.phone_numbers] == ["tel:0800111999", "tel:999"]
    assert page.answers == []
