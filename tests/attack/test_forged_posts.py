"""Forged forms: every address that takes a post wants the desk's form token, or is on this list with the reason."""

import pytest
from django.test import Client

from tests.attack.whole_site import ROUTES, World
from tests.desk.permissions import token_of
from triage.models import JobSheet

pytestmark = pytest.mark.django_db

# No address here reads a cookie, so another site gains nothing by having somebody's browser send the form.
WITHOUT_TOKEN = {
    "household-hand-over": "a form anybody may fill in, in a frame where no cookie arrives; signed, for one day",
    "household-hand-over-kept": "the same form sent later by the phone; only from this site's own pages, by Origin",
    "household-sheet-erase": "the token in the address is the whole right to do it",
    "api-job-sheets": "a key in a header, or a page of the firm's own origins",
}
REFUSES_POSTS = (403, 405)


def test_every_other_address_refuses_a_post_without_a_token():
    world = World()
    strict = Client(enforce_csrf_checks=True)
    strict.cookies = world.clients["owner"].cookies
    taken = {}
    for name in ROUTES:
        if name not in WITHOUT_TOKEN and name != "api-nowhere":
            status = strict.post(world.address(name), {"sure": "yes"}).status_code
            if status not in REFUSES_POSTS:
                taken[name] = status
    assert taken == {}
    assert strict.post("/api/nowhere", {}).status_code == 404


def test_a_token_of_another_browser_does_not_fit():
    world = World()
    strict = Client(enforce_csrf_checks=True)
    strict.cookies = world.clients["owner"].cookies
    strict.get(world.address("desk-settings"))
    answer = strict.post(world.address("desk-status"), {"status": "done", "csrfmiddlewaretoken": "a" * 64})
    assert answer.status_code == 403
    assert JobSheet.objects.get().status == "new"


@pytest.mark.parametrize("origin", ["https://evil.example", "null", "", "https://testserver.evil.example"])
def test_the_phones_own_way_takes_nothing_from_another_site(origin):
    world = World()
    headers = {"Idempotency-Key": "a" * 32} | ({"Origin": origin} if origin else {})
    answer = Client().post("/check/hand-over/kept/?firm=" + world.firm.slug, {}, headers=headers)
    assert (answer.status_code, answer.headers["Content-Type"]) == (403, "application/problem+json")


def test_a_link_that_is_opened_erases_nothing():
    """A mail program that looks at links ahead of their reader must not erase a job sheet."""
    world = World()
    answer = Client().get(f"/sheet/{world.sheet.reference}/erase/?token={token_of(world.sheet)}")
    assert answer.status_code == 200
    world.sheet.refresh_from_db()
    assert world.sheet.erased is None


@pytest.mark.parametrize("method", ["put", "patch", "delete", "trace"])
def test_no_other_method_does_anything(method):
    world = World()
    owner = world.clients["owner"]
    for name in ROUTES:
        answer = getattr(owner, method)(world.address(name))
        assert answer.status_code in (403, 404, 405, 302), name
    world.sheet.refresh_from_db()
    assert (world.sheet.status, world.sheet.erased) == ("new", None)
