"""What is not there is told in the API's shape, by any method."""

import pytest

from tests.api.asking import problem_in


@pytest.mark.parametrize(
    "path", ["/api/", "/api/v1", "/api/v2/step", "/api/v1/step/", "/api/v1/firms/a%00b/job-sheets"]
)
@pytest.mark.parametrize("method", ["get", "post", "options", "delete"])
def test_no_page_is_sent_for_what_is_not_there(client, path, method):
    response = getattr(client, method)(path)
    assert response.status_code == 404
    assert problem_in(response)["detail"] == "There is no such address. All addresses are in /api/v1/openapi.json."
