"""Each way out is a page; a reason nobody knows is not there."""

import pytest

from tests.household.checks_done import address, open_page
from triage.knowledge.library import library


@pytest.mark.parametrize("reason", library().texts_for("gb-eng").start.exits)
def test_each_way_out_has_its_page(client, reason):
    page = open_page(client, address(f"/not-this/{reason}/"))
    assert page.one("h1").text == library().texts_for("gb-eng").start.exits[reason].heading


def test_an_unknown_reason_is_not_there(client):
    assert client.get("/not-this/toaster/").status_code == 404
