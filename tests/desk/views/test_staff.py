"""The staff page: links shown once, roles, leaving, and a lost second factor."""

import pytest
from django.test import Client
from django.urls import reverse

from tests.desk.clients import client_of
from tests.firm_builders import make_firm, make_member
from tests.reading_pages import read_page
from triage.models import Invitation, Member

pytestmark = pytest.mark.django_db

STAFF = reverse("desk-staff")


@pytest.fixture
def firm():
    return make_firm()


@pytest.fixture
def owner(firm):
    return make_member(firm, "owner", username="robin")


def do(owner, member, deed, **told):
    client = client_of(owner)
    client.post(reverse("desk-staff-action", args=[member.pk, deed]), told)
    return client.get(STAFF).content.decode()


def test_a_link_is_shown_once_and_opens(owner):
    client = client_of(owner)
    assert client.post(STAFF, {"name": "Kim", "role": "agent"}).url == STAFF
    link = read_page(client.get(STAFF)).one(".shown-once code").text
    assert link.startswith("http://testserver/desk/invitation/")
    assert Client().get(link).status_code == 200
    assert link not in client.get(STAFF).content.decode()
    client.post(reverse("desk-withdraw", args=[Invitation.objects.get().pk]))
    assert Client().get(link).status_code == 404


def test_an_invitation_without_a_name_is_told(owner):
    page = client_of(owner).post(STAFF, {"name": "", "role": "agent"})
    assert (page.status_code, Invitation.objects.count()) == (400, 0)


def test_a_role_is_changed(firm, owner):
    member = make_member(firm, "agent", username="kim")
    assert "Role of kim changed." in do(owner, member, "role", role="repairer")
    member.refresh_from_db()
    assert member.role == "repairer"
    assert "Choose a role from the list." in do(owner, member, "role", role="king")


def test_the_last_owner_stays(owner):
    assert "The firm would have no owner left." in do(owner, owner, "remove")
    assert "The firm would have no owner left." in do(owner, owner, "role", role="agent")
    owner.refresh_from_db()
    assert owner.role == "owner"


def test_who_is_removed_is_out_at_once(firm, owner):
    member = make_member(firm, "agent", username="kim")
    theirs = client_of(member)
    assert "kim was removed." in do(owner, member, "remove")
    assert theirs.get(reverse("desk-inbox")).url == reverse("desk-firms")
    assert not Member.objects.filter(pk=member.pk).exists()


def test_a_lost_second_factor_is_reset(firm, owner):
    member = make_member(firm, "agent", username="kim", totp_secret="A" * 32)
    assert "Two-factor authentication of kim was reset." in do(owner, member, "reset")
    member.refresh_from_db()
    assert member.totp_secret == ""


def test_only_the_deeds_there_are_have_an_address(owner):
    assert client_of(owner).post(f"{STAFF}{owner.pk}/promote/").status_code == 404
