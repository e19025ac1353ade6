"""One shape for every error, as RFC 9457 (Problem Details for HTTP APIs, section 3) has it."""

import json

import pytest

from triage.jobsheet.errors import FieldProblem
from triage.web.json_errors import ApiError, ErrorKind, problem_response, title_of


def test_an_error_becomes_a_problem_document():
    problems = [FieldProblem("booking.name", "Give a name.")]
    response = problem_response(
        ApiError(ErrorKind.INVALID_REQUEST, "Nothing was written.", problems, {"Allow": "GET"}, {"more": 1})
    )
    assert response.status_code == 422
    assert response.headers["Content-Type"] == "application/problem+json"
    assert response.headers["Cache-Control"] == "no-store"
    assert response.headers["Allow"] == "GET"
    assert json.loads(response.content) == {
        "type": "urn:oven-fault-check:problem:invalid-request",
        "title": "Invalid request",
        "status": 422,
        "detail": "Nothing was written.",
        "errors": [{"field": "booking.name", "detail": "Give a name."}],
        "more": 1,
    }


def test_a_request_for_another_sites_name_is_told_in_the_one_shape_under_api_alone(client):
    response = client.get("/api/v1/step", headers={"Host": "elsewhere.example"})
    assert response.status_code == 400
    assert response.json()["detail"] == "This site does not answer such a request. Look at its name."
    page = client.get("/", headers={"Host": "elsewhere.example"})
    assert (page.status_code, page.headers["Content-Type"]) == (400, "text/html; charset=utf-8")


@pytest.mark.parametrize("kind", ErrorKind)
def test_every_kind_has_a_title_and_a_type_of_its_own(kind):
    assert title_of(kind)
    assert [other for other in ErrorKind if other.type == kind.type] == [kind]
    assert 400 <= kind.status <= 599
