"""What caches may keep and what none may (RFC 9111); a repeat costs no body (RFC 9110, section 13)."""

import pytest
from django.test import RequestFactory

from triage.api.responses import document_response, private_response

READS = (
    "/api/v1/step?region=gb-eng",
    "/api/v1/pack?region=gb-eng",
    "/api/v1/openapi.json",
    "/api/v1/job-sheet.schema.json",
)


@pytest.mark.parametrize("path", READS)
def test_what_is_open_is_kept_a_while_and_not_sent_twice(client, path):
    first = client.get(path)
    assert first.headers["Cache-Control"] == "public, max-age=300"
    again = client.get(path, headers={"If-None-Match": first.headers["ETag"]})
    assert (again.status_code, again.content) == (304, b"")


def test_a_step_names_what_it_depends_on(client):
    assert "Accept-Language" in client.get("/api/v1/step").headers["Vary"]
    assert "Accept-Language" not in client.get("/api/v1/step?region=gb-eng").headers.get("Vary", "")


def test_another_text_is_another_version():
    request = RequestFactory().get("/")
    one, other = (document_response(request, {"a": item}).headers["ETag"] for item in (1, 2))
    assert one != other


def test_what_names_somebody_is_kept_nowhere():
    response = private_response({"name": "Żółw 🐢"}, 201, {"Location": "/there"})
    assert response.status_code == 201
    assert response.headers["Cache-Control"] == "no-store, private"
    assert response.headers["X-Robots-Tag"] == "noindex, nofollow"
    assert response.headers["Location"] == "/there"
    assert response.content.decode() == '{"name": "Żółw 🐢"}'
