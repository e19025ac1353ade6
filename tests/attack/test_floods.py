"""Nobody buries a firm in invented hand-overs: an address may send so many, and is told when it may go on."""

import pytest

from tests.firm_builders import make_firm
from tests.household.hand_overs import TYPED, form_address, send
from tests.reading_pages import read_page
from triage.models import JobSheet

pytestmark = pytest.mark.django_db


@pytest.fixture
def firm(settings):
    settings.TRIAGE_BOOKING_RATE_LIMIT = "2"
    return make_firm()


def kept_by_phone(client, firm, number, **more):
    headers = {"Idempotency-Key": f"{number:032x}", "Origin": "http://testserver"}
    return client.post(form_address(firm).replace("hand-over/", "hand-over/kept/"), TYPED, headers=headers, **more)


def test_one_too_many_is_told_so_and_keeps_what_was_typed(client, firm):
    for _ in range(2):
        assert send(client, form_address(firm)).status_code == 302
    answer = send(client, form_address(firm), name="Alex Quill")
    assert answer.status_code == 429
    assert 1 <= int(answer["Retry-After"]) <= 600
    page = read_page(answer)
    assert page.one('input[name="name"]').attributes["value"] == "Alex Quill"
    (items,) = [item.text for item in page.select('div[role="alert"] li')]
    assert items.startswith("Too many forms came from your network in a short time, so nothing was sent.")
    assert JobSheet.objects.count() == 2


def test_the_same_form_may_be_sent_again_later(client, firm, settings):
    send(client, form_address(firm))
    send(client, form_address(firm))
    page = read_page(send(client, form_address(firm)))
    state = page.one('input[name="state"]').attributes["value"]
    settings.TRIAGE_BOOKING_RATE_LIMIT = "60"
    assert send(client, form_address(firm), state=state).status_code == 302


def test_a_phone_that_sends_later_is_counted_with_the_form_and_is_told_to_wait(client, firm):
    assert send(client, form_address(firm)).status_code == 302
    assert kept_by_phone(client, firm, 1).status_code == 200
    answer = kept_by_phone(client, firm, 2)
    assert (answer.status_code, answer.headers["Content-Type"]) == (429, "application/problem+json")
    assert int(answer.headers["Retry-After"]) >= 1
    assert JobSheet.objects.count() == 2


def test_forms_that_were_refused_count_too(client, firm):
    for _ in range(2):
        assert send(client, form_address(firm), name="").status_code == 422
    assert send(client, form_address(firm)).status_code == 429


def test_another_address_goes_on_and_a_made_up_one_does_not_count(client, firm):
    for _ in range(2):
        kept_by_phone(client, firm, 1)
    assert kept_by_phone(client, firm, 2, REMOTE_ADDR="192.0.2.9").status_code == 200
    forged = kept_by_phone(client, firm, 3, HTTP_X_FORWARDED_FOR="192.0.2.77")
    assert forged.status_code == 429


def test_looking_at_the_form_is_not_counted(client, firm):
    for _ in range(5):
        assert client.get(form_address(firm)).status_code == 200


def test_a_household_with_many_addresses_of_its_own_is_one(client, firm):
    """A home with IPv6 has 2 to the 64 addresses."""
    items = [kept_by_phone(client, firm, n, REMOTE_ADDR=f"2001:db8:1:2::{n}").status_code for n in range(3)]
    assert items == [200, 200, 429]
