"""What stands on every page of the desk: the places for this role, and the sentences that waited."""

import pytest
from django.urls import reverse

from tests.desk.clients import client_as, client_of, make_account
from tests.firm_builders import make_firm, make_member
from tests.reading_pages import read_page
from triage.models.firm import Role

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("role", "places"),
    [
        (Role.AGENT, ["Job sheets", "Calls", "Account"]),
        (Role.REPAIRER, ["Job sheets", "Calls", "Accuracy", "Account"]),
        (
            Role.OWNER,
            [
                "Job sheets",
                "Calls",
                "Accuracy",
                "Deliveries",
                "Exports",
                "Staff",
                "Settings",
                "Account",
            ],
        ),
    ],
)
def test_each_role_is_shown_the_places_it_may_go(role, places):
    client = client_as(role)
    page = read_page(client.get(reverse("desk-inbox")))
    links = page.select("nav a")
    assert [link.text for link in links] == places
    assert {client.get(link.attributes["href"]).status_code for link in links} == {200}
    assert [link.text for link in links if "aria-current" in link.attributes] == ["Job sheets"]


def test_a_sentence_is_shown_once():
    client = client_as(Role.OWNER)
    client.post(reverse("desk-delivery-test"))
    assert "Test queued." in client.get(reverse("desk-deliveries")).content.decode()
    assert "Test queued." not in client.get(reverse("desk-deliveries")).content.decode()


def test_who_keeps_the_pack_finds_the_way_to_it():
    member = make_member(make_firm(), Role.AGENT)
    member.user.is_staff = True
    member.user.save()
    assert "Knowledge base" in client_of(member).get(reverse("desk-inbox")).content.decode()


def test_without_a_firm_there_is_nowhere_to_go_but_out(client):
    client.force_login(make_account())
    page = read_page(client.get(reverse("desk-firms")))
    assert page.select("nav a") == []
    assert page.one(".account-menu button").text == "Sign out"
