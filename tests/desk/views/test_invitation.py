"""The page behind an invitation: a new account, or the one that is signed in."""

import pytest
from django.contrib.auth.models import User
from django.urls import reverse

from tests.desk.clients import PASSWORD, make_account
from tests.firm_builders import make_firm
from tests.reading_pages import read_page
from triage.desk.login_throttle import PER_ACCOUNT
from triage.desk.staff import invite
from triage.models import Member

pytestmark = pytest.mark.django_db


@pytest.fixture
def link():
    return reverse("desk-invitation", args=[invite(firm=make_firm(), name="Kim", role="repairer")])


def test_a_new_account_is_in_at_once(client, link):
    page = client.get(link)
    assert "Your role: Repairer." in page.content.decode()
    assert page.headers["Referrer-Policy"] == "same-origin"
    assert client.post(link, {"account": "kim", "password": PASSWORD}).url == "/desk/"
    assert "Welcome to Hearth &amp; Hob Repairs." in client.get("/desk/").content.decode()
    assert Member.objects.get(user__username="kim").role == "repairer"
    assert client.get(link).status_code == 404


def test_who_is_signed_in_joins_with_one_press(client, link):
    client.force_login(make_account())
    assert read_page(client.get(link)).one(".primary-action").text == "Join as robin"
    assert client.post(link).url == "/desk/"
    assert client.get("/desk/").status_code == 200


def test_a_wrong_link_tells_nothing(client):
    assert client.get(reverse("desk-invitation", args=["x" * 43])).status_code == 404


def test_names_cannot_be_tried_for_ever(client, link):
    make_account()
    for _ in range(PER_ACCOUNT.quota):
        page = client.post(link, {"account": "robin", "password": PASSWORD})
        assert "This username is not available. Choose another one." in page.content.decode()
    assert "Too many attempts" in client.post(link, {"account": "kim", "password": PASSWORD}).content.decode()
    assert not User.objects.filter(username="kim").exists()
