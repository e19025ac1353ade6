"""Choosing a firm: one's own, and each with its own second factor."""

import pytest
from django.urls import reverse

from tests.desk.clients import make_account
from tests.firm_builders import make_firm, make_member
from tests.reading_pages import read_page
from triage.models import Member

pytestmark = pytest.mark.django_db

FIRMS = reverse("desk-firms")


def test_each_of_ones_firms_can_be_entered_and_no_other(client):
    user = make_account()
    plain = Member.objects.create(user=user, firm=make_firm(name="Plain"), role="agent")
    guarded = Member.objects.create(user=user, firm=make_firm(name="Guarded"), role="owner", totp_secret="A" * 32)
    other = make_member(make_firm())
    client.force_login(user)
    shown = [button.text for button in read_page(client.get(FIRMS)).select("button[name]")]
    assert shown == ["Guarded Owner", "Plain Agent"]
    assert client.post(FIRMS, {"member": other.pk}).status_code == 404
    assert client.post(FIRMS, {"member": plain.pk}).url == "/desk/"
    assert client.get("/desk/").status_code == 200
    assert client.post(FIRMS, {"member": guarded.pk}).url == reverse("desk-verify")
    assert client.get("/desk/").url == reverse("desk-verify")


def test_who_belongs_to_none_is_told(client):
    client.force_login(make_account())
    assert "Your account belongs to no firm." in client.get(FIRMS).content.decode()
