"""Enumeration: nobody learns which references, links, accounts, firms or keys exist."""

import re

import pytest
from django.test import Client

from tests.attack.whole_site import World
from tests.desk.clients import make_account
from tests.desk.permissions import token_of
from triage.jobsheet.reference import ALPHABET, new_reference

pytestmark = pytest.mark.django_db

NONE = "ZZZZZ-ZZZZZ"


def test_a_reference_cannot_be_counted_up():
    """Fifty random bits: two sheets of one minute have nothing in common, and guessing finds none."""
    drawn = [new_reference() for _ in range(2000)]
    assert len(set(drawn)) == len(drawn)
    for place in (*range(5), *range(6, 11)):
        assert {reference[place] for reference in drawn} == set(ALPHABET)


@pytest.mark.parametrize("path", ["/sheet/{}/", "/sheet/{}/erase/"])
def test_a_wrong_token_and_no_such_sheet_read_alike(client, path):
    world = World()
    pages = [
        client.get(path.format(reference) + query)
        for reference in (world.sheet.reference, NONE, "not-one", "'--")
        for query in ("", "?token=", f"?token={'0' * 40}")
    ]
    assert {page.status_code for page in pages} == {404}
    assert len({page.content for page in pages}) == 1
    assert client.get(f"/sheet/{NONE}/?token={token_of(world.sheet)}").content == pages[0].content


def test_the_same_work_is_done_for_a_sheet_that_is_none(client, django_assert_num_queries):
    world = World()
    for reference in (world.sheet.reference, NONE):
        with django_assert_num_queries(1):
            client.get(f"/sheet/{reference}/?token=x")


@pytest.mark.parametrize("name", ["desk-sheet", "desk-text", "desk-json", "desk-photo", "desk-outcome", "desk-erase"])
def test_a_stranger_reads_the_same_of_another_firms_sheet_and_of_none(name):
    world = World()
    stranger = world.clients["stranger"]
    there = world.address(name)
    pages = [stranger.get(there), stranger.get(there.replace(world.sheet.reference, NONE))]
    assert [page.status_code for page in pages] == [404, 404]
    assert without_token(pages[0]) == without_token(pages[1])


def test_an_account_that_exists_and_one_that_does_not_read_alike():
    make_account("robin")
    pages = [Client().post("/desk/sign-in/", {"account": name, "password": "wrong"}) for name in ("robin", "nobody")]
    assert {page.status_code for page in pages} == {400}
    texts = [without_token(page).replace(b"robin", b"").replace(b"nobody", b"") for page in pages]
    assert texts[0] == texts[1]


def test_a_firm_that_is_none_tells_an_api_caller_no_more_than_one_whose_key_they_lack(client):
    world = World()
    answers = [client.get(f"/api/v1/firms/{slug}/job-sheets/{NONE}") for slug in (world.firm.slug, "no-such-firm")]
    assert {answer.status_code for answer in answers} == {401}
    assert answers[0].content == answers[1].content


def test_an_invitation_that_was_never_made_reads_like_one_that_is_used_up():
    world = World()
    used = world.address("desk-invitation")
    world.clients["stranger"].post(used, {})
    pages = [Client().get(used), Client().get("/desk/invitation/never-made/")]
    assert [page.status_code for page in pages] == [404, 404]
    assert without_token(pages[0]) == without_token(pages[1])


def without_token(page):
    return re.sub(rb'(name="csrfmiddlewaretoken" value="|/desk/[^"]*)[^"]*"', b"", page.content)
