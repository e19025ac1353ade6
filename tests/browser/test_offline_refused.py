"""Where the phone cannot keep the check, nobody notices: the site answers all of it."""

from dataclasses import replace

import pytest
from playwright.sync_api import expect

from tests.browser.phone import CONTROLLED, SETS, go_offline, install, until
from tests.browser.test_offline_update import publish  # noqa: F401
from tests.browser.walking_by_hand import cannot_tell_the_rest, heading, no_danger, tap
from triage.offline.precache import precache_manifest

pytestmark = pytest.mark.django_db(transaction=True)

GAVE_UP = "async () => !(await navigator.serviceWorker.getRegistration())"
SMALL_DISK = 20_000  # bytes; the pack alone is larger


def walk(page):
    tap(page, "It does not get hot at all")
    no_danger(page)
    assert 1 <= cannot_tell_the_rest(page) <= 12
    expect(page.get_by_role("heading", name="What to do now")).to_be_visible()


def assert_no_worker_came(page):
    until(page, GAVE_UP)
    assert page.evaluate(f"() => ({CONTROLLED})()") is False


def test_a_full_disk_leaves_the_check_to_the_site(page):
    session = page.context.new_cdp_session(page)
    session.send("Storage.overrideQuotaForOrigin", {"origin": page.site, "quotaSize": SMALL_DISK})
    page.goto(f"{page.site}/?region=gb-eng")
    assert_no_worker_came(page)
    walk(page)


def test_a_first_set_that_arrives_broken_is_not_used_and_the_next_try_is(page, publish):  # noqa: F811
    files = precache_manifest().files
    pack = next(file for file in files if "/offline/pack-" in file.url)
    publish(files=tuple(replace(file, hash="0" * 32) if file is pack else file for file in files))
    page.goto(f"{page.site}/?region=gb-eng")
    assert_no_worker_came(page)
    walk(page)
    publish()
    install(page)
    assert page.evaluate(SETS) == [f"oven-check-set-{precache_manifest().version}"]
    go_offline(page)
    page.reload()
    tap(page, "It does not get hot at all")
    expect(heading(page)).to_have_text("Is there any danger?")
