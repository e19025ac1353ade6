"""The form that phones keep: the firm's own, without a state, a name or an answer."""

import pytest

from tests.firm_builders import make_firm
from tests.reading_pages import read_page

pytestmark = pytest.mark.django_db


def test_it_is_the_firms_form_with_nothing_in_it(client):
    firm = make_firm(slug="hearth", retention_days=30)
    page = read_page(client.get("/check/hand-over/blank/?region=gb-eng&firm=hearth"))
    form = page.one("form[data-firm]")
    assert form.attributes["data-firm"] == firm.name
    assert form.attributes["action"] == "/check/hand-over/?region=gb-eng&firm=hearth"
    assert [field.attributes["value"] for field in form.select('input[type="hidden"]')] == [""]
    assert "30 days" in form.text


def test_answers_in_its_address_would_come_along_so_phones_send_none(client):
    make_firm(slug="hearth")
    response = client.get("/check/hand-over/blank/?region=gb-eng&firm=hearth")
    assert response.headers["Cache-Control"] == "no-cache"
    assert response.cookies == {}


def test_a_firm_that_is_not_there_has_none(client):
    assert client.get("/check/hand-over/blank/?region=gb-eng&firm=nobody").status_code == 404
