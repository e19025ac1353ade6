"""No page of the site holds a script, a style or a handler of its own, and each says that none may run."""

import re

import pytest
from django.db import transaction

from tests.attack.whole_site import World, every_answer
from tests.reading_pages import read_page

pytestmark = pytest.mark.django_db

ALWAYS = {
    "default-src 'self'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self' data:",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
}
UNSAFE = re.compile(r"unsafe-|\*|nonce-|data:(?!$)|blob:|http:")
INLINE = re.compile(rb"<[^>]*\s(on[a-z]+|style)\s*=|href=[\"']?\s*(javascript|data|vbscript):", re.IGNORECASE)


@pytest.fixture(scope="module")
def answers(django_db_setup, django_db_blocker):
    with django_db_blocker.unblock(), transaction.atomic():
        found = every_answer(World())
        transaction.set_rollback(True)
    return found


def test_every_answer_of_the_site_has_the_policy(answers):
    without = {name for name, answer in answers.items() if not set(policy(answer)) >= ALWAYS}
    assert without == {"static"}  # a file, which runs nothing by itself


def test_no_policy_has_a_way_around_it(answers):
    assert {name: p for name, a in answers.items() for p in policy(a) if UNSAFE.search(p)} == {}


def test_no_page_holds_anything_to_run(answers):
    pages = {name: a for name, a in answers.items() if a.headers.get("Content-Type", "").startswith("text/html")}
    assert len(pages) > 40
    for name, answer in pages.items():
        found = INLINE.search(answer.content)
        assert not found, (name, found[0])
        page = read_page(answer)
        assert page.select("style") == [], name
        for script in page.select("script"):
            assert script.text == "" or script.attributes.get("type") == "application/json", name
            assert script.attributes["src"].startswith("/static/"), name
        assert all(link.attributes["href"].startswith("/") for link in page.select("link")), name


def policy(answer):
    return answer.headers.get("Content-Security-Policy", "").split("; ")
