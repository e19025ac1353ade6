"""The settings page: kept whole or not at all, and the secret is shown once."""

import pytest
from django.urls import reverse

from tests.desk.clients import client_of
from tests.firm_builders import make_firm, make_member
from tests.reading_pages import read_page

pytestmark = pytest.mark.django_db

SETTINGS = reverse("desk-settings")
GOOD = {"name": "Hearth", "region": "gb-eng", "accent": "#a83c12", "retention_days": "90"}


@pytest.fixture
def firm():
    return make_firm(webhook_url="", webhook_secret="")


@pytest.fixture
def owner(firm):
    return client_of(make_member(firm, "owner"))


def test_settings_are_kept(firm, owner):
    assert owner.post(SETTINGS, GOOD | {"origins": "https://hearth.example"}).url == SETTINGS
    firm.refresh_from_db()
    assert (firm.name, firm.origins, firm.retention_days) == ("Hearth", ["https://hearth.example"], 90)
    assert "Settings saved." in owner.get(SETTINGS).content.decode()


def test_one_wrong_line_keeps_nothing_and_what_was_typed_stays(firm, owner):
    page = owner.post(SETTINGS, GOOD | {"origins": "hearth.example", "areas": "<script>alert(1)</script>"})
    firm.refresh_from_db()
    assert (page.status_code, firm.name) == (400, "Hearth & Hob Repairs")
    tree = read_page(page)
    assert "is not a web address" in tree.one("#id_origins_error").text
    assert tree.one("#id_areas").text == "<script>alert(1)</script>"
    assert tree.one("#id_origins").attributes["aria-invalid"] == "true"
    assert tree.one(".wordmark").text == "Hearth & Hob Repairs"


def test_a_secret_is_shown_once_when_made_and_once_when_replaced(firm, owner):
    owner.post(SETTINGS, GOOD | {"webhook_url": "https://hearth.example/in"})
    firm.refresh_from_db()
    first = firm.webhook_secret
    assert read_page(owner.get(SETTINGS)).one(".shown-once code").text == first
    assert first not in owner.get(SETTINGS).content.decode()
    assert owner.post(reverse("desk-webhook-secret")).url == f"{SETTINGS}#webhook"
    firm.refresh_from_db()
    assert firm.webhook_secret != first
    assert read_page(owner.get(SETTINGS)).one(".shown-once code").text == firm.webhook_secret
    assert firm.webhook_secret not in owner.get(SETTINGS).content.decode()
