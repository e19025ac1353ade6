"""What a password opens, what it does not, and where signing in may lead."""

import pytest
from django.contrib.auth.hashers import Argon2PasswordHasher
from django.contrib.auth.models import User

from tests.desk.clients import PASSWORD, make_account
from triage.desk.authentication import MAX_PASSWORD_LENGTH, Throttled, check_password, safe_next
from triage.desk.login_throttle import PER_ACCOUNT

pytestmark = pytest.mark.django_db


@pytest.fixture
def request_from(rf):
    def make(address="192.0.2.1"):
        return rf.post("/desk/sign-in/", REMOTE_ADDR=address)

    return make


def test_the_right_password_and_no_other(request_from):
    user = make_account()
    assert check_password(request_from(), "robin", PASSWORD) == user
    assert check_password(request_from(), "robin", "a kettle of cold words") is None
    assert check_password(request_from(), "nobody", PASSWORD) is None
    assert check_password(request_from(), "robin", PASSWORD + "x" * MAX_PASSWORD_LENGTH) is None


@pytest.mark.parametrize("account", ["robin", "nobody", "gone", "invited"])
def test_every_wrong_try_costs_one_hash_whether_there_is_such_an_account_or_not(request_from, monkeypatch, account):
    """The hash takes nearly all the time, so the time tells nothing; counted here, because clocks are no test."""
    make_account()
    make_account("gone", is_active=False)
    User.objects.create_user("invited")
    hashed = []
    encode, verify = Argon2PasswordHasher.encode, Argon2PasswordHasher.verify
    monkeypatch.setattr(Argon2PasswordHasher, "encode", lambda *a: hashed.append("new") or encode(*a))
    monkeypatch.setattr(Argon2PasswordHasher, "verify", lambda *a: hashed.append("old") or verify(*a))
    assert check_password(request_from(), account, "wrong") is None
    assert len(hashed) == 1


def test_too_many_tries_stop_the_right_password_too(request_from):
    make_account()
    for _ in range(PER_ACCOUNT.quota):
        check_password(request_from(), "robin", "wrong")
    with pytest.raises(Throttled):
        check_password(request_from("192.0.2.2"), "robin", PASSWORD)
    for _ in range(PER_ACCOUNT.quota):
        check_password(request_from("192.0.2.3"), "nobody", "wrong")
    with pytest.raises(Throttled):
        check_password(request_from("192.0.2.4"), "nobody", "wrong")


@pytest.mark.parametrize(
    "wanted",
    [
        *("", "//evil.example/desk/", "https://evil.example/desk/", "/\\evil.example", "javascript:alert(1)"),
        *("http://testserver@evil.example/desk/", "/desk\\@evil.example", "/", "/call/", "desk/", "/desk/\r\nX: y"),
        *("https:///evil.example/desk/", "\t//evil.example", "///desk/", "/deskx/"),
    ],
)
def test_signing_in_leads_to_the_desk_and_nowhere_else(request_from, wanted):
    assert safe_next(request_from(), wanted) == "/desk/"


def test_signing_in_leads_back_to_the_page_that_was_asked_for(request_from):
    assert safe_next(request_from(), "/desk/sheets/AAAAA-AAAAA/?x=1") == "/desk/sheets/AAAAA-AAAAA/?x=1"
