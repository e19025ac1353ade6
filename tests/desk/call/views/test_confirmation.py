"""After the hand-over the reference is there to be read out, for the firm it belongs to."""

import pytest
from django.test import Client

from tests.desk.clients import client_as
from tests.firm_builders import make_job_sheet
from tests.reading_pages import read_page
from triage.jobsheet.reference import spelled_out

CALL = "?region=gb-eng&complaint=no-heat&call-id=ABCDE"


@pytest.fixture
def address(agent):
    return f"/desk/call/taken/{make_job_sheet(agent.firm, taken_by=agent).reference}/{CALL}"


def test_the_reference_is_there_to_say_and_to_check(client, address):
    page = read_page(client.get(address))
    reference = address.split("/")[4]
    assert page.one("p.spelled").text == spelled_out(reference)
    assert page.one("p.written").text == reference
    assert page.one("main").attributes["data-call-id"] == "ABCDE"
    assert f"/sheet/{reference}/?token=" in page.one("[data-js-own-link]").text
    assert "call-ask=danger" in page.select("nav.shortcuts a")[0].attributes["href"]


def test_another_firms_reference_and_none_at_all_are_alike(address):
    other = client_as()
    pages = [other.get(address), other.get(f"/desk/call/taken/ZZZZZ-ZZZZZ/{CALL}")]
    assert [page.status_code for page in pages] == [404, 404]
    assert address.split("/")[4] not in pages[0].content.decode()


def test_who_is_not_signed_in_is_shown_the_door(address):
    assert Client().get(address).url.startswith("/desk/sign-in/")
