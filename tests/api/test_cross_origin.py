"""Browsers are told exactly which pages may hand over, as the Fetch standard's CORS protocol has it."""

import pytest

from tests.api.asking import PAGE, address, firm_with_key, send

pytestmark = pytest.mark.django_db
ALLOW = "Access-Control-Allow-"


def preflight(client, firm, origin):
    headers = {
        "Origin": origin,
        "Access-Control-Request-Method": "POST",
        "Access-Control-Request-Headers": "content-type,idempotency-key",
    }
    return client.options(address(firm), headers=headers)


def test_a_page_of_the_firm_is_let_in(client):
    response = preflight(client, firm_with_key()[0], PAGE)
    assert response.status_code == 204
    assert response.headers[f"{ALLOW}Origin"] == PAGE
    assert response.headers[f"{ALLOW}Methods"] == "POST"
    assert response.headers[f"{ALLOW}Headers"] == "Content-Type, Idempotency-Key"
    assert response.headers["Access-Control-Max-Age"] == "600"
    assert response.headers["Allow"] == "POST, OPTIONS"
    assert f"{ALLOW}Credentials" not in response.headers
    assert "Origin" in response.headers["Vary"]


@pytest.mark.parametrize("origin", ["https://elsewhere.example", "null", "*"])
def test_a_page_of_anybody_else_is_not(client, origin):
    response = preflight(client, firm_with_key()[0], origin)
    assert not [name for name in response.headers if name.startswith("Access-Control-")]
    assert "Origin" in response.headers["Vary"]


def test_the_page_may_read_the_answer_and_a_refusal(client):
    firm, _words = firm_with_key()
    for item, status in ((None, 201), (b"[", 400)):
        response = send(client, firm, item, Origin=PAGE)
        assert response.status_code == status
        assert response.headers[f"{ALLOW}Origin"] == PAGE
        assert "Location" in response.headers["Access-Control-Expose-Headers"]
        assert "Origin" in response.headers["Vary"]


def test_a_key_is_never_among_what_a_page_may_send(client):
    assert "authorization" not in preflight(client, firm_with_key()[0], PAGE).headers[f"{ALLOW}Headers"].lower()
