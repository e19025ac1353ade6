"""Pages with a name on them are kept by nobody."""

import pytest
from django.http import HttpResponse

from tests.firm_builders import make_firm
from triage.household.private_page import keep_private, show_private


def test_no_cache_and_no_search_engine_keeps_it():
    response = keep_private(HttpResponse(), None)
    assert response["Cache-Control"] == "no-store, private"
    assert response["Referrer-Policy"] == "no-referrer"
    assert response["X-Robots-Tag"] == "noindex, nofollow"
    assert not hasattr(response, "_csp_replace")


@pytest.mark.django_db
def test_its_own_firm_may_frame_it(rf):
    firm = make_firm(origins=["https://hearth.example"])
    response = show_private(rf.get("/"), "triage/500.html", {}, firm, status=422)
    assert response.status_code == 422
    assert response._csp_replace == {"frame-ancestors": ["https://hearth.example"]}
