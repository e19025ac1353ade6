"""The sender erases what was sent: asked once more, by a post, for good."""

import pytest
from django.test import Client

from tests.firm_builders import make_job_sheet
from tests.reading_pages import read_page
from triage.household.sheet_address import sheet_address
from triage.models import JobSheet

pytestmark = pytest.mark.django_db


@pytest.fixture
def sheet():
    return make_job_sheet()


def erase_href(client, sheet):
    page = read_page(client.get(sheet_address(sheet)))
    (href,) = [link.attributes["href"] for link in page.select("a") if link.text == "Erase this"]
    return href


def test_looking_erases_nothing(client, sheet):
    response = client.get(erase_href(client, sheet))
    assert response["Cache-Control"] == "no-store, private"
    assert read_page(response).one("h1").text == "Erase what you sent?"
    assert JobSheet.objects.get().name == "Alex Grey"


def test_a_post_erases_it_for_good(sheet):
    client = Client(enforce_csrf_checks=True)
    href = erase_href(client, sheet)
    form = read_page(client.get(href)).one("form")
    assert (form.attributes["method"], form.attributes["action"]) == ("post", href)
    response = client.post(href, follow=True)
    page = read_page(response)
    assert page.one("h1").text == "This was erased"
    assert "Alex" not in page.text
    kept = JobSheet.objects.get()
    assert (kept.name, kept.street, bool(kept.answers)) == ("", "", True)
    assert read_page(client.post(href, follow=True)).one("h1").text == "This was erased"


@pytest.mark.parametrize("how", ["get", "post"])
def test_nobody_else_can(client, sheet, how):
    response = getattr(client, how)(f"/sheet/{sheet.reference}/erase/?token=wrong")
    assert (response.status_code, response["Cache-Control"]) == (404, "no-store, private")
    assert JobSheet.objects.get().name == "Alex Grey"
