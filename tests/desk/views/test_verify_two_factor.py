"""The second factor over HTTP: without the code the password opens nothing, and codes are counted."""

from time import time

import pyotp
import pytest
from django.urls import reverse

from tests.desk.clients import PASSWORD, make_account
from tests.firm_builders import make_firm
from triage.desk.login_throttle import PER_ACCOUNT
from triage.models import Member

pytestmark = pytest.mark.django_db

STEP = reverse("desk-verify")


@pytest.fixture
def secret():
    return pyotp.random_base32()


@pytest.fixture
def waiting(client, secret):
    """A browser that has passed the password."""
    Member.objects.create(user=make_account(), firm=make_firm(), role="owner", totp_secret=secret)
    answer = client.post("/desk/sign-in/", {"account": "robin", "password": PASSWORD, "next": "/desk/staff/"})
    assert answer.url == STEP
    return client


def test_the_password_alone_opens_nothing(waiting):
    for name in ("desk-inbox", "desk-account", "desk-second-factor", "desk-staff"):
        assert waiting.get(reverse(name)).url == STEP


def test_the_code_opens_the_page_that_was_asked_for_in_a_new_session(waiting, secret):
    before = waiting.session.session_key
    assert waiting.post(STEP, {"code": pyotp.TOTP(secret).now()}).url == "/desk/staff/"
    assert waiting.session.session_key != before
    assert waiting.get("/desk/staff/").status_code == 200


def test_no_code_works_twice(waiting, secret):
    code = pyotp.TOTP(secret).at(time())
    waiting.post(STEP, {"code": code})
    waiting.post("/desk/sign-out/")
    waiting.post("/desk/sign-in/", {"account": "robin", "password": PASSWORD})
    page = waiting.post(STEP, {"code": code})
    assert page.status_code == 400
    assert "has already been used" in page.content.decode()


def test_guessing_codes_is_stopped(waiting, secret):
    for _ in range(PER_ACCOUNT.quota):
        assert waiting.post(STEP, {"code": "abcdef"}).status_code == 400
    assert waiting.post(STEP, {"code": pyotp.TOTP(secret).now()}).status_code == 429


def test_nobody_waits_who_has_no_second_factor(client):
    client.force_login(make_account("kim"))
    assert client.get(STEP).url == reverse("desk-firms")
