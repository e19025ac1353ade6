"""Open redirects and forged hosts: whatever an address or a header says, nobody is sent to another site."""

from urllib.parse import quote, urlsplit

import pytest

from tests.attack.whole_site import ROUTES, World
from tests.desk.clients import PASSWORD, make_account
from tests.firm_builders import make_firm, make_job_sheet, make_member
from triage.models.firm import Role

pytestmark = pytest.mark.django_db

ELSEWHERE = ("https://evil.example/", "//evil.example", "/\\evil.example", "\\\\evil.example", "https:evil.example")
NAMES = ("next", "url", "to", "return", "redirect", "region", "firm", "complaint", "sent", "token")


def leads_elsewhere(answer):
    target = urlsplit(answer.headers.get("Location", "").replace("\\", "/"))
    return target.netloc not in ("", "testserver") or target.scheme not in ("", "http", "https")


@pytest.mark.parametrize("target", ELSEWHERE)
def test_no_parameter_of_any_address_leads_elsewhere(target):
    world = World()
    result = "&".join(f"{name}={quote(target)}" for name in NAMES)
    astray = []
    for name in ROUTES:
        for who in ("nobody", "owner"):
            answer = world.clients[who].get(f"{world.address(name)}?{result}")
            if leads_elsewhere(answer):
                astray.append((name, answer.headers["Location"]))
    assert astray == []


@pytest.mark.parametrize("target", ELSEWHERE)
def test_signing_in_leads_to_the_desk(client, target):
    member = make_member(make_firm(), Role.OWNER, username="sam")
    member.user.set_password(PASSWORD)
    member.user.save()
    answer = client.post("/desk/sign-in/", {"account": "sam", "password": PASSWORD, "next": target})
    assert (answer.status_code, answer.headers["Location"]) == (302, "/desk/")


@pytest.mark.parametrize("path", ["//evil.example/", "//evil.example/%2f..", "/\\evil.example/"])
def test_a_path_that_looks_like_a_host_is_a_page_that_is_not_there(client, path):
    answer = client.get(f"{path}check")
    assert answer.status_code in (301, 404)
    assert not leads_elsewhere(answer)


@pytest.mark.parametrize(
    "host", ["evil.example", "testserver.evil.example", "testserver:80@evil.example", "a b", "[::1"]
)
def test_a_forged_host_is_refused(client, host):
    answer = client.get("/?region=gb-eng", headers={"Host": host})
    assert answer.status_code == 400
    assert b"Traceback" not in answer.content
    assert host.encode() not in answer.content


def test_a_host_a_proxy_was_told_is_not_believed(client):
    answer = client.get(
        "/?region=gb-eng", headers={"X-Forwarded-Host": "evil.example", "Forwarded": "host=evil.example"}
    )
    assert (answer.status_code, b"evil.example" in answer.content) == (200, False)


def test_no_kept_page_holds_a_host_somebody_else_named(client, settings):
    settings.ALLOWED_HOSTS = ["testserver", "other.example"]
    other = client.get("/?region=gb-eng", headers={"Host": "other.example"})
    own = client.get("/?region=gb-eng")
    assert (other.status_code, own.status_code) == (200, 200)
    assert b"other.example" not in own.content


def test_an_account_link_of_a_stranger_is_not_followed(client):
    make_account()
    answer = client.get("/desk/?next=//evil.example")
    assert answer.headers["Location"].startswith("/desk/sign-in/")


def test_the_senders_page_leads_nowhere_else(client):
    sheet = make_job_sheet()
    answer = client.get(f"/sheet/{sheet.reference}/?token=//evil.example")
    assert answer.status_code == 404
    assert b"evil.example" not in answer.content
