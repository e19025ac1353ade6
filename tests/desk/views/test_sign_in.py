"""Signing in over HTTP: one sentence for every wrong try, a new session, and the way back to the desk alone."""

import pytest
from django.urls import reverse

from tests.desk.clients import PASSWORD, make_account
from tests.firm_builders import make_firm
from tests.reading_pages import read_page
from triage.desk.login_throttle import PER_ACCOUNT
from triage.models import Member

pytestmark = pytest.mark.django_db

DOOR = "/desk/sign-in/"


def sign_in(client, account="robin", password=PASSWORD, **told):
    return client.post(DOOR, {"account": account, "password": password, **told})


@pytest.fixture
def member():
    return Member.objects.create(user=make_account(), firm=make_firm(), role="agent")


def test_it_leads_back_to_the_page_that_was_asked_for(client, member):
    asked = client.get("/desk/?status=new")
    assert asked.url == f"{DOOR}?next=%2Fdesk%2F%3Fstatus%3Dnew"
    assert read_page(client.get(asked.url)).one('[name="next"]').attributes["value"] == "/desk/?status=new"
    assert sign_in(client, next="/desk/?status=new").url == "/desk/?status=new"
    assert client.get("/desk/").status_code == 200


def test_it_leads_to_no_other_site(client, member):
    assert sign_in(client, next="https://evil.example/desk/").url == "/desk/"


def test_a_wrong_password_and_no_such_account_read_alike(client, member):
    pages = [sign_in(client, account=account, password="mistyped") for account in ("robin", "nobody")]
    errors = [read_page(page).one('[role="alert"]').text for page in pages]
    assert errors == ["The username or password is wrong. Check both and try again."] * 2
    assert [page.status_code for page in pages] == [400, 400]
    assert "mistyped" not in pages[0].content.decode()


def test_too_many_tries_read_alike_too(client, member):
    for account in ("robin", "nobody"):
        for _ in range(PER_ACCOUNT.quota):
            sign_in(client, account=account, password="wrong")
        page = sign_in(client, account=account)
        assert page.status_code == 429
        assert read_page(page).one('[role="alert"]').text == "Too many attempts. Wait 15 minutes, then try again."


def test_the_session_is_another_one_after_signing_in(client, member):
    client.get(DOOR)
    session = client.session
    session["planted"] = "by a stranger"
    session.save()
    client.cookies["sessionid"] = session.session_key
    sign_in(client)
    assert client.session.session_key != session.session_key
    assert "planted" not in client.session


def test_its_cookie_stays_at_the_desk_and_away_from_scripts(client, member):
    cookie = sign_in(client).cookies["sessionid"]
    assert (cookie["path"], cookie["httponly"], cookie["samesite"]) == ("/desk/", True, "Lax")


@pytest.mark.parametrize("account", ["", "x" * 151, "a\x00b", "😀", "שלום"])
def test_whatever_is_typed_gets_a_page(client, account):
    assert sign_in(client, account=account).status_code == 400


def test_a_closed_account_stays_out(client, member):
    member.user.is_active = False
    member.user.save()
    assert sign_in(client).status_code == 400


def test_with_several_firms_one_is_chosen_first(client, member):
    Member.objects.create(user=member.user, firm=make_firm(), role="owner")
    assert sign_in(client, next="/desk/account/").url == reverse("desk-firms")
    assert client.get("/desk/").url == reverse("desk-firms")
    assert client.post(reverse("desk-firms"), {"member": member.pk}).url == "/desk/account/"
