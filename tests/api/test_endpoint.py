"""Methods, troubles and failures are answered alike everywhere, and no address needs a cookie or a form token."""

import logging

import pytest
from django.http import HttpResponse
from django.test import Client, RequestFactory

from tests.api.asking import address, bearer, firm_with_key, problem_in, send
from triage.api.endpoint import endpoint, public_get

READS = ("/api/v1/step", "/api/v1/pack", "/api/v1/openapi.json", "/api/v1/job-sheet.schema.json")


@pytest.mark.parametrize("path", READS)
def test_a_read_may_only_be_read(client, path):
    response = client.post(path)
    assert problem_in(response)["detail"] == "Use one of these methods here: GET, HEAD, OPTIONS."
    assert response.status_code == 405
    assert response.headers["Allow"] == "GET, HEAD, OPTIONS"


@pytest.mark.parametrize("path", READS)
def test_any_page_may_read_what_is_open(client, path):
    response = client.get(path, headers={"Origin": "https://elsewhere.example"})
    assert response.headers["Access-Control-Allow-Origin"] == "*"
    assert "Access-Control-Allow-Credentials" not in response.headers
    assert response.cookies == {}


def test_options_says_what_may_be_done(client):
    response = client.options("/api/v1/step")
    assert (response.status_code, response.content) == (204, b"")
    assert response.headers["Allow"] == "GET, HEAD, OPTIONS"


@pytest.mark.parametrize("wrap", [endpoint("GET"), public_get])
def test_a_failure_is_logged_here_and_told_without_its_trace(caplog, wrap):
    @wrap
    def broken(_request):
        raise ValueError("a secret")

    with caplog.at_level(logging.ERROR):
        response = broken(RequestFactory().get("/api/v1/broken"))
    assert response.status_code == 500
    assert b"secret" not in response.content
    assert b"The error is on our side and was logged." in response.content
    assert "ValueError: a secret" in caplog.text


def test_a_view_answers_its_own_methods():
    answered = endpoint("PUT")(lambda _request: HttpResponse("well"))
    assert answered(RequestFactory().put("/")).content == b"well"
    assert answered(RequestFactory().get("/")).status_code == 405


@pytest.mark.django_db
def test_no_form_token_is_asked_for():
    firm, secret = firm_with_key()
    assert send(Client(enforce_csrf_checks=True), firm, **bearer(secret)).status_code == 201
    assert address(firm).startswith("/api/")
