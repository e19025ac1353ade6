"""From the end of a call to a job sheet over HTTP: whose it is, once, and what comes back when something is wrong."""

from datetime import timedelta

import pytest
from django.utils import timezone

from tests.desk.call.filled_in import fields_of
from tests.desk.call.reading_aloud import ELEMENT, query_of, told_and_read
from tests.desk.clients import client_of
from tests.firm_builders import make_firm, make_member
from tests.jobsheet.test_booking_rule import REFUSED
from tests.reading_pages import read_page
from triage.check_pages.form_state import new_state
from triage.jobsheet.consent import spoken_consent
from triage.models import AuditEntry, JobSheet, Member
from triage.models.audit_entry import AuditAction
from triage.models.firm import Role

pytestmark = pytest.mark.django_db
THERE = "/desk/call/hand-over/"


@pytest.fixture
def address(call, reopen):
    return f"{THERE}?{told_and_read(call, reopen)}"


def state_of(client, address):
    return read_page(client.get(address)).one('input[name="state"]').attributes["value"]


def send(client, address, firm, **changes):
    typed = fields_of(firm, **{"state": "", **changes})
    typed["state"] = typed["state"] or state_of(client, address)
    return client.post(address, typed)


def wrong_of(response):
    assert response.status_code == 422
    return read_page(response).one("main div.note").text


@pytest.mark.parametrize("role", list(Role))
def test_whoever_takes_the_call_hands_it_over_and_stands_on_the_job_sheet(address, role):
    member = make_member(make_firm(), role)
    response = send(client_of(member), address, member.firm)
    sheet = JobSheet.objects.get()
    assert response.url.startswith(f"/desk/call/taken/{sheet.reference}/?region=gb-eng&complaint=no-heat")
    assert (sheet.firm, sheet.taken_by, dict(sheet.answers)) == (member.firm, member, ELEMENT)
    assert AuditEntry.objects.get(sheet=sheet, action=AuditAction.HANDED_OVER).member == member


def test_the_form_has_one_heading_the_way_out_and_every_sentence_to_read(client, address, agent):
    page = read_page(client.get(address))
    assert len(page.select("h1")) == 1
    assert page.select("nav.shortcuts a")[0].text.startswith("D")
    assert "Emergency 999" in page.one("nav.shortcuts").text
    assert len(page.select("fieldset.consent input")) == len(spoken_consent(agent.firm)) + 1


@pytest.mark.parametrize(
    "query", [query_of(ELEMENT), "x=%00&call-id=%FF", *(query_of(answers) for answers in REFUSED.values())]
)
def test_before_all_was_read_and_where_nobody_needs_to_come_it_leads_back_to_the_call(client, query):
    for response in (client.get(f"{THERE}?region=gb-eng&{query}"), client.post(f"{THERE}?region=gb-eng&{query}")):
        assert response.url.startswith("/desk/call/?region=gb-eng")
    assert not JobSheet.objects.exists()


def test_what_is_wrong_is_said_and_all_that_was_typed_is_still_there(client, address, agent):
    response = send(client, address, agent.firm, telephone="ring me", name="", notes="Has a dog.")
    told = wrong_of(response)
    assert "Give a name the repairer can ask for." in told
    assert "This is not a telephone number." in told
    page = read_page(response)
    assert page.one('input[name="telephone"]').attributes["value"] == "ring me"
    assert page.one("#notes").text == "Has a dog."
    assert not JobSheet.objects.exists()


def test_a_sentence_that_was_not_read_out_holds_it_up(client, address, agent):
    unread = next(name for name in fields_of(agent.firm) if name.startswith("read-"))
    assert "Read every sentence of it out" in wrong_of(send(client, address, agent.firm, **{unread: ""}))
    assert not JobSheet.objects.exists()


def test_sent_twice_it_is_one_job_sheet(client, address, agent):
    state = state_of(client, address)
    urls = {send(client, address, agent.firm, state=state).url for _ in range(2)}
    assert (len(urls), JobSheet.objects.count()) == (1, 1)


def test_sent_again_with_other_details_the_first_is_named_and_no_second_is_made(client, address, agent):
    state = state_of(client, address)
    send(client, address, agent.firm, state=state)
    told = wrong_of(send(client, address, agent.firm, state=state, name="Robin Grey"))
    assert f"job sheet with other details: {JobSheet.objects.get().reference}. Correct it there." in told


def test_a_form_of_another_firm_or_of_yesterday_is_not_taken(client, address, agent, monkeypatch):
    assert "more than a day" in wrong_of(send(client, address, agent.firm, state=new_state(make_firm().slug)))
    state, later = new_state(agent.firm.slug), (timezone.now() + timedelta(days=2)).timestamp()
    monkeypatch.setattr("django.core.signing.time.time", lambda: later)
    assert "more than a day" in wrong_of(send(client, address, agent.firm, state=state))
    assert not JobSheet.objects.exists()


def test_an_agent_who_left_the_firm_hands_nothing_over(client, address, agent):
    state = state_of(client, address)
    Member.objects.filter(pk=agent.pk).delete()
    assert send(client, address, agent.firm, state=state).url == "/desk/firms/"
    assert not JobSheet.objects.exists()
