"""The delivery log: a test goes out, and what was given up can be tried again."""

import pytest
from django.urls import reverse

from tests.desk.clients import client_of
from tests.firm_builders import make_delivery, make_firm, make_member
from tests.reading_pages import read_page
from triage.models import Delivery

pytestmark = pytest.mark.django_db

LOG = reverse("desk-deliveries")


@pytest.fixture
def firm():
    return make_firm()


@pytest.fixture
def owner(firm):
    return client_of(make_member(firm, "owner"))


def test_a_test_is_put_in_line(firm, owner):
    assert owner.post(reverse("desk-delivery-test")).url == LOG
    delivery = Delivery.objects.get(firm=firm)
    assert (delivery.event, delivery.channel, delivery.state) == ("test", "webhook", "waiting")


def test_without_a_webhook_there_is_nothing_to_test():
    firm = make_firm(webhook_url="")
    owner = client_of(make_member(firm, "owner"))
    owner.post(reverse("desk-delivery-test"))
    assert "Give the webhook&#x27;s address first." in owner.get(LOG).content.decode()
    assert not Delivery.objects.exists()


def test_what_was_given_up_is_shown_with_its_reason_and_tried_again(firm, owner):
    dead = make_delivery(firm, state="dead", attempts=14, last_error="The receiver answered <b>500</b>.")
    make_delivery(make_firm(), state="dead", last_error="Of another firm.")
    page = owner.get(f"{LOG}?state=dead").content.decode()
    assert "The receiver answered &lt;b&gt;500&lt;/b&gt;." in page
    assert "Of another firm." not in page
    assert "1 failed" in owner.get(LOG).content.decode()
    owner.post(reverse("desk-delivery-retry", args=[dead.pk]))
    dead.refresh_from_db()
    assert (dead.state, dead.attempts) == ("waiting", 0)


def test_what_arrived_is_not_sent_again(firm, owner):
    sent = make_delivery(firm, state="sent")
    owner.post(reverse("desk-delivery-retry", args=[sent.pk]))
    sent.refresh_from_db()
    assert sent.state == "sent"
    assert "Only a failed delivery can be retried." in owner.get(LOG).content.decode()


def test_a_long_log_comes_in_pages(firm, owner):
    for _ in range(51):
        make_delivery(firm)
    assert len(read_page(owner.get(LOG)).select("tbody tr")) == 50
    assert len(read_page(owner.get(f"{LOG}?page=2")).select("tbody tr")) == 1


@pytest.mark.parametrize("number", [0, 2**63, 10**30])
def test_a_number_that_is_no_delivery_is_not_there(owner, number):
    assert owner.post(reverse("desk-delivery-retry", args=[number])).status_code == 404
