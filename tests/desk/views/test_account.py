"""Changing the password: only with the old one, and other sessions end."""

import pytest
from django.urls import reverse

from tests.desk.clients import PASSWORD, client_of, make_account
from tests.firm_builders import make_firm
from tests.reading_pages import read_page
from triage.desk.login_throttle import PER_ACCOUNT
from triage.models import Member

pytestmark = pytest.mark.django_db

ACCOUNT = reverse("desk-account")
NEW = "another kettle of words"


@pytest.fixture
def member():
    return Member.objects.create(user=make_account(), firm=make_firm(), role="agent")


def test_a_new_password_ends_every_other_session(member):
    here, elsewhere = client_of(member), client_of(member)
    before = here.session.session_key
    assert here.post(ACCOUNT, {"old": PASSWORD, "new": NEW}).url == ACCOUNT
    member.user.refresh_from_db()
    assert member.user.check_password(NEW)
    assert "Password changed." in here.get(ACCOUNT).content.decode()
    assert here.session.session_key != before
    assert elsewhere.get(ACCOUNT).url.startswith(reverse("desk-sign-in"))


@pytest.mark.parametrize(
    ("told", "words"),
    [
        ({"old": "wrong", "new": NEW}, "This is not your current password."),
        ({"old": PASSWORD, "new": "short"}, "This password is too short."),
        ({"old": PASSWORD, "new": ""}, "This field is required."),
    ],
)
def test_what_is_wrong_is_told_and_nothing_changes(member, told, words):
    page = client_of(member).post(ACCOUNT, told)
    assert page.status_code == 400
    assert words in read_page(page).one(".error").text
    member.user.refresh_from_db()
    assert member.user.check_password(PASSWORD)


def test_the_old_password_cannot_be_guessed_here_either(member):
    client = client_of(member)
    for _ in range(PER_ACCOUNT.quota):
        client.post(ACCOUNT, {"old": "wrong", "new": NEW})
    assert "Too many attempts" in client.post(ACCOUNT, {"old": PASSWORD, "new": NEW}).content.decode()
