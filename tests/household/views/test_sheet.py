"""Who holds the link sees the sheet; everybody else is told nothing."""

import pytest

from tests.firm_builders import make_firm, make_job_sheet
from tests.reading_pages import read_page
from triage.household.sheet_address import sheet_address
from triage.models.audit_entry import Actor, AuditAction

pytestmark = pytest.mark.django_db


@pytest.fixture
def sheet():
    return make_job_sheet(make_firm(origins=["https://hearth.example"]))


def test_its_sender_sees_it_and_that_is_written_down(client, sheet):
    response = client.get(sheet_address(sheet))
    assert response["Cache-Control"] == "no-store, private"
    assert response["Referrer-Policy"] == "no-referrer"
    assert not response.cookies
    page = read_page(response)
    assert page.one("h1").text == f"What you sent to {sheet.firm.name}"
    assert "Alex Grey" in page.one("dl").text
    assert sheet_address(sheet) in page.one("main p.link a").attributes["href"]
    line = sheet.audit_entries.last()
    assert (line.actor, line.action) == (Actor.SENDER, AuditAction.OPENED)


def test_any_spelling_of_the_reference_opens_it(client, sheet):
    told = sheet_address(sheet).replace(sheet.reference, sheet.reference.lower().replace("-", ""))
    assert client.get(told).status_code == 200


def test_a_wrong_token_and_a_sheet_that_is_not_there_are_the_same(client, sheet):
    addresses = [
        f"/sheet/{sheet.reference}/?token=wrong",
        f"/sheet/{sheet.reference}/",
        f"/sheet/{sheet.reference}/?token={'0' * 40}",
        sheet_address(make_job_sheet()).replace("/sheet/", "/sheet/X"),
        "/sheet/AAAAA-22222/?token=wrong",
        "/sheet/%00/?token=%ff",
    ]
    answers = [client.get(told) for told in addresses]
    assert {(answer.status_code, answer["Cache-Control"]) for answer in answers} == {(404, "no-store, private")}
    assert len({answer.content.replace(b" ", b"") for answer in answers[:3]}) == 1
    assert sheet.audit_entries.filter(action=AuditAction.OPENED).count() == 0


def test_it_is_only_read_there(client, sheet):
    assert client.post(sheet_address(sheet)).status_code == 405
