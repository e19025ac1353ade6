"""The script is there for firms we know, and other sites' pages may load it."""

import pytest

from tests.firm_builders import make_firm

pytestmark = pytest.mark.django_db


def test_a_page_of_another_site_may_load_it(client):
    response = client.get(f"/embed/{make_firm().slug}/loader.js")
    assert response["Content-Type"] == "text/javascript; charset=utf-8"
    assert response["Cross-Origin-Resource-Policy"] == "cross-origin"
    assert response["Cache-Control"] == "public, max-age=300"
    assert "oven-fault-check" in response.content.decode()
    assert not response.cookies


def test_an_unknown_firm_has_none(client):
    assert client.get("/embed/nobody/loader.js").status_code == 404
    assert client.post(f"/embed/{make_firm().slug}/loader.js").status_code == 405
