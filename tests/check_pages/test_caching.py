"""A page is kept by any cache for a short time, and known again by what is in it."""

from triage.check_pages.caching import FRESH_SECONDS
from triage.knowledge.library import library

ADDRESS = "/check/?region=ie&complaint=no-heat"


def test_any_cache_may_keep_a_page_for_minutes(client):
    response = client.get(ADDRESS)
    assert response["Cache-Control"] == f"public, max-age={FRESH_SECONDS}"
    assert library().pack.version in response["ETag"]
    assert "Set-Cookie" not in response


def test_the_same_page_is_not_sent_twice(client):
    etag = client.get(ADDRESS)["ETag"]
    again = client.get(ADDRESS, headers={"If-None-Match": etag})
    assert (again.status_code, again.content) == (304, b"")
    assert again["ETag"].removeprefix("W/") == etag.removeprefix("W/")
    assert "HX-Request" in again["Vary"]


def test_page_and_fragment_are_different_things(client):
    assert client.get(ADDRESS)["ETag"] != client.get(ADDRESS, headers={"HX-Request": "true"})["ETag"]


def test_only_a_page_that_guesses_the_place_depends_on_the_language(client):
    assert "Accept-Language" not in client.get(ADDRESS)["Vary"]
    assert "Accept-Language" in client.get("/check/?complaint=no-heat")["Vary"]
    assert "Accept-Language" in client.get("/check/?region=atlantis")["Vary"]
