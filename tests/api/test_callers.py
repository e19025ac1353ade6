"""A cast before a firm's door: its system with a key, a page of its own, another firm, somebody else, nobody."""

import pytest

from tests.api.asking import PAGE, address, bearer, firm_with_key, problem_in, send
from tests.firm_builders import make_job_sheet
from triage.api import callers
from triage.models import ApiKey, JobSheet
from triage.web.api_keys import revoke_key
from triage.web.rate_limit import Policy

pytestmark = pytest.mark.django_db


def test_the_firms_system_and_its_page_may_hand_over(client):
    firm, secret = firm_with_key()
    assert send(client, firm, **bearer(secret)).status_code == 201
    assert send(client, firm, key="another-key-0002", Origin=PAGE).status_code == 201


@pytest.mark.parametrize("authorization", ["", "Bearer", "Bearer ofc_wrong", "Basic YTpi", "ofc_"])
def test_nobody_may_and_is_told_what_to_send(client, authorization):
    firm, _words = firm_with_key()
    headers = {"Authorization": authorization} if authorization else {}
    response = send(client, firm, **headers)
    assert response.status_code == 401
    assert response.headers["WWW-Authenticate"] == 'Bearer realm="job sheets"'
    assert problem_in(response)["detail"].startswith("Send one of the firm's keys that still works")
    assert not JobSheet.objects.exists()


@pytest.mark.parametrize(
    "origin", ["https://elsewhere.example", "null", PAGE + "/", PAGE.upper(), "http://www.hearth.example"]
)
def test_a_page_of_another_origin_may_not(client, origin):
    firm, _words = firm_with_key()
    response = send(client, firm, Origin=origin)
    assert response.status_code == 403
    assert problem_in(response)["type"] == "urn:oven-fault-check:problem:origin-not-allowed"
    assert "Access-Control-Allow-Origin" not in response.headers


def test_a_firm_that_lists_a_star_opens_to_nobody(client):
    firm, _words = firm_with_key()
    firm.origins = ["*", None, 7]
    firm.save()
    assert send(client, firm, Origin="*").status_code == 403


def test_another_firms_key_is_told_what_a_firm_that_does_not_exist_is(client):
    firm, secret = firm_with_key()
    other, _others = firm_with_key()
    sheet = make_job_sheet(other)
    answers = [
        client.get(path, headers=bearer(secret))
        for path in (address(other, sheet.reference), f"/api/v1/firms/nobody/job-sheets/{sheet.reference}")
    ]
    assert [answer.status_code for answer in answers] == [404, 404]
    assert answers[0].content == answers[1].content
    assert send(client, other, **bearer(secret)).status_code == 404
    assert (
        send(client, firm, Origin="https://a.example").content
        == client.post("/api/v1/firms/nobody/job-sheets", headers={"Origin": "https://a.example"}).content
    )


def test_a_revoked_key_is_nobodys(client):
    firm, secret = firm_with_key()
    revoke_key(key=ApiKey.objects.get())
    assert send(client, firm, **bearer(secret)).status_code == 401
    # A key that is shown has to be good, even from a page that needs none.
    assert send(client, firm, Origin=PAGE, **bearer(secret)).status_code == 401


def test_a_page_may_not_read_back(client):
    firm, _words = firm_with_key()
    sheet = make_job_sheet(firm)
    response = client.get(address(firm, sheet.reference), headers={"Origin": PAGE})
    assert response.status_code == 401
    assert "Access-Control-Allow-Origin" not in response.headers


def test_a_key_and_an_address_are_counted_apart(client, monkeypatch):
    monkeypatch.setattr(callers, "PER_KEY", Policy("key", quota=2, seconds=3600))
    monkeypatch.setattr(callers, "PER_ADDRESS", Policy("address", quota=1, seconds=3600))
    firm, secret = firm_with_key()
    asked = [client.get(address(firm, "KD7MX-4QPTR"), headers=bearer(secret)) for _ in range(3)]
    assert [response.status_code for response in asked] == [404, 404, 429]
    assert asked[0].headers["RateLimit-Policy"] == '"key";q=2;w=3600'
    assert asked[0].headers["RateLimit"].startswith('"key";r=1;t=')
    assert "Retry-After" not in asked[0].headers
    assert int(asked[2].headers["Retry-After"]) > 0
    document = problem_in(asked[2])
    assert document["type"] == "https://iana.org/assignments/http-problem-types#quota-exceeded"
    assert document["violated-policies"] == ["key"]
    assert send(client, firm, Origin=PAGE).status_code == 201
    assert send(client, firm, Origin=PAGE).status_code == 429


def test_a_read_of_the_check_is_not_counted(client, monkeypatch):
    monkeypatch.setattr(callers, "PER_ADDRESS", Policy("address", quota=0, seconds=3600))
    response = client.get("/api/v1/step?region=gb-eng")
    assert response.status_code == 200
    assert "RateLimit" not in response.headers
