"""The page of API keys: each is shown once, listed by its first characters, and ends at once when it is revoked."""

import pytest
from django.urls import reverse
from django.utils import timezone

from tests.api.asking import address, bearer
from tests.desk.clients import client_of
from tests.firm_builders import make_firm, make_job_sheet, make_member
from tests.reading_pages import read_page
from triage.models import ApiKey
from triage.web.api_keys import authenticate_key, make_key

pytestmark = pytest.mark.django_db

KEYS = reverse("desk-keys")


@pytest.fixture
def firm():
    return make_firm()


@pytest.fixture
def owner(firm):
    return client_of(make_member(firm, "owner"))


def make(owner, name="Telephone menu"):
    """The page after a key was made."""
    assert owner.post(KEYS, {"name": name}).url == KEYS
    return read_page(owner.get(KEYS))


def rows(owner):
    return [row.text for row in read_page(owner.get(KEYS)).select(".record")]


def test_a_key_is_shown_once_with_words_that_say_so_and_works(client, firm, owner):
    page = make(owner)
    assert "shown only once" in page.one(".shown-once").text
    assert "cannot be shown again" in page.one(".shown-once").text
    words = page.one(".shown-once code").text
    again = owner.get(KEYS).content.decode()
    assert words not in again
    assert words not in str(dict(owner.session))
    sheet = make_job_sheet(firm)
    assert client.get(address(firm, sheet.reference), headers=bearer(words)).status_code == 200


def test_the_list_says_what_uses_a_key_how_it_begins_and_when_it_was_used(firm, owner):
    words = make(owner).one(".shown-once code").text
    (row,) = rows(owner)
    assert row.startswith(f"Telephone menu {words[:8]}…")
    assert "never" in row
    authenticate_key(words)
    assert "never" not in rows(owner)[0]
    make_key(firm=make_firm(), name="Firm's")
    assert len(rows(owner)) == 1


def test_a_key_made_before_first_characters_were_kept_is_listed(firm, owner):
    ApiKey.objects.create(firm=firm, name="Old", key_hash="x", created=timezone.now())
    assert rows(owner)[0].startswith("Old ofc_…")


def test_a_revoked_key_opens_nothing_and_stays_at_the_end_of_the_list(client, firm, owner):
    words, sheet = make(owner, "First").one(".shown-once code").text, make_job_sheet(firm)
    there = reverse("desk-key-revoke", args=[ApiKey.objects.get().pk])
    make(owner, "Second")
    assert owner.post(there).url == KEYS
    page = read_page(owner.get(KEYS))
    assert page.one(".messages").text == "Key “First” revoked."
    assert [row.one("strong").text for row in page.select(".record")] == ["Second", "First"]
    assert [row.text.count("Revoked") for row in page.select(".record")] == [0, 1]
    assert [button.attributes["aria-label"] for button in page.select(".record button")] == ["Revoke Second"]
    assert client.get(address(firm, sheet.reference), headers=bearer(words)).status_code == 401
    owner.post(there)
    assert read_page(owner.get(KEYS)).one(".messages").text == "Key “First” had already been revoked."


@pytest.mark.parametrize("name", ["", "  ", "n" * 81, "\x00", "\x01"])
def test_a_key_without_a_good_name_is_not_made(owner, name):
    page = owner.post(KEYS, {"name": name})
    assert (page.status_code, ApiKey.objects.count()) == (400, 0)
    assert read_page(page).one("#id_name_error").text


def test_the_settings_lead_there(owner):
    leads = [link.attributes["href"] for link in read_page(owner.get(reverse("desk-settings"))).select("main a")]
    assert KEYS in leads
