"""Sessions: a key known before is worth nothing after, the cookie goes where it must and no further."""

from http.cookies import SimpleCookie

import pytest
from django.conf import settings as site
from django.contrib.sessions.models import Session
from django.test import Client

from tests.desk.clients import PASSWORD, client_of
from tests.firm_builders import make_firm, make_member
from triage.desk.second_factor import new_secret
from triage.models.firm import Role

pytestmark = pytest.mark.django_db

KEY = site.SESSION_COOKIE_NAME


@pytest.fixture
def member():
    found = make_member(make_firm(), Role.OWNER, username="sam")
    found.user.set_password(PASSWORD)
    found.user.save()
    return found


def sign_in(client):
    return client.post("/desk/sign-in/", {"account": "sam", "password": PASSWORD})


def test_a_key_somebody_planted_opens_nothing_after_signing_in(client, member):
    planted = "a" * 32
    client.cookies = SimpleCookie({KEY: planted})
    sign_in(client)
    assert client.cookies[KEY].value != planted
    thief = Client()
    thief.cookies = SimpleCookie({KEY: planted})
    assert thief.get("/desk/").headers["Location"].startswith("/desk/sign-in/")


def test_a_real_key_from_before_is_worth_nothing_after(client, member):
    client.get("/desk/sign-in/")
    session = client.session
    session["anything"] = 1
    session.save()
    before = session.session_key
    client.cookies[KEY] = before
    sign_in(client)
    assert client.cookies[KEY].value != before
    assert not Session.objects.filter(pk=before).exists()


def test_the_key_changes_at_the_second_factor_too(client, member, monkeypatch):
    member.totp_secret = new_secret()
    member.save()
    monkeypatch.setattr("triage.desk.views.sign_in.verify_code", lambda *_told: True)
    sign_in(client)
    halfway = client.cookies[KEY].value
    assert client.get("/desk/").headers["Location"] == "/desk/second-step/"
    client.post("/desk/second-step/", {"code": "123456"})
    assert client.cookies[KEY].value != halfway
    assert not Session.objects.filter(pk=halfway).exists()
    assert client.get("/desk/").status_code == 200


def test_signing_out_ends_the_session_on_the_site_and_not_only_in_the_browser(member):
    client, thief = client_of(member), Client()
    thief.cookies = SimpleCookie({KEY: client.cookies[KEY].value})
    assert thief.get("/desk/").status_code == 200
    client.post("/desk/sign-out/")
    assert thief.get("/desk/").headers["Location"].startswith("/desk/sign-in/")


def test_a_new_password_ends_every_other_session(member):
    here, elsewhere = Client(), Client()
    sign_in(here)
    sign_in(elsewhere)
    here.post("/desk/account/", {"old": PASSWORD, "new": "another kettle of warm words"})
    assert here.get("/desk/").status_code == 200
    assert elsewhere.get("/desk/").headers["Location"].startswith("/desk/sign-in/")


def test_the_cookies_have_their_flags_and_stay_at_the_desk(client, member, settings):
    settings.SESSION_COOKIE_SECURE = settings.CSRF_COOKIE_SECURE = True
    session = sign_in(client).cookies[KEY]
    assert (session["httponly"], session["secure"], session["samesite"], session["path"]) == (
        True,
        True,
        "Lax",
        "/desk/",
    )
    assert (session["domain"], int(session["max-age"])) == ("", 12 * 3600)
    token = client.get("/desk/sign-in/").cookies[site.CSRF_COOKIE_NAME]
    assert (token["secure"], token["samesite"], token["path"]) == (True, "Lax", "/desk/")


def test_outside_the_desk_a_cookie_is_neither_read_nor_set(member):
    """The test client would fail on a query for the session here: these pages ask no database."""
    client = client_of(member)
    for address in ("/", "/check/?complaint=no-heat", "/call/", "/api/v1/openapi.json", "/health/"):
        answer = client.get(address)
        assert not answer.cookies
        assert "Cookie" not in answer.headers.get("Vary", "")
        assert b"/desk/sign-out/" not in answer.content


def test_a_session_someone_made_up_is_a_stranger(client):
    client.cookies = SimpleCookie({KEY: "../../etc/passwd", "csrftoken": "x" * 5000})
    assert client.get("/desk/").headers["Location"].startswith("/desk/sign-in/")
