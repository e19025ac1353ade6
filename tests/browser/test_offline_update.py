"""A newer version is used from the next check on, and one that does not arrive whole is not used at all."""

import re
from dataclasses import replace

import pytest
from playwright.sync_api import expect

from tests.browser.phone import SETS, go_offline, install, let_old_worker_rest, says, status, until
from tests.browser.walking_by_hand import cannot_tell_the_rest, heading, no_danger, tap
from triage.offline.precache import PrecacheEntry, precache_manifest
from triage.offline.views import service_worker

pytestmark = pytest.mark.django_db(transaction=True)

UPDATE = "async () => { await (await navigator.serviceWorker.getRegistration()).update() }"
WAITS = "async () => Boolean((await navigator.serviceWorker.getRegistration()).waiting)"

NEWER_ALONE = "async () => (await caches.keys()).join() === 'oven-check-set-newer'"


@pytest.fixture
def publish(monkeypatch):
    """Puts another set on the site."""

    def publish(**changes):
        changed = replace(precache_manifest(), **changes)
        monkeypatch.setattr(service_worker, "precache_manifest", lambda: changed)

    return publish


def kept_name(version):
    return f"oven-check-set-{version}"


def test_a_newer_version_waits_for_the_next_check(page, publish):
    install(page)
    tap(page, "It does not get hot at all")
    publish(version="newer")
    page.evaluate(UPDATE)
    until(page, WAITS)
    no_danger(page)
    assert sorted(page.evaluate(SETS)) == sorted([kept_name(precache_manifest().version), kept_name("newer")])
    cannot_tell_the_rest(page)
    assert kept_name(precache_manifest().version) in page.evaluate(SETS)
    page.get_by_role("link", name="Oven fault check").click()
    expect(page.get_by_label("Find it in your own words")).to_be_visible()
    let_old_worker_rest(page)
    until(page, NEWER_ALONE)
    go_offline(page)
    tap(page, "It does not get hot at all")
    expect(heading(page)).to_have_text("Is there any danger?")
    expect(status(page)).to_be_empty()


def test_a_check_in_another_window_is_carried_over_and_told_so(page, publish):
    install(page)
    tap(page, "It does not get hot at all")
    publish(version="newer")
    page.evaluate(UPDATE)
    until(page, WAITS)
    other = page.context.new_page()
    other.goto(f"{page.site}/?region=gb-eng")
    let_old_worker_rest(page)
    says(page, "updated while you were using it")
    no_danger(page)
    expect(page).to_have_url(re.compile("complaint=no-heat"))


def test_a_version_that_does_not_arrive_whole_leaves_the_last_good_one(page, publish):
    install(page)
    first = precache_manifest().files
    broken = PrecacheEntry(first[0].url, "0" * 64)
    publish(version="newer", files=(broken, *first[1:]))
    page.evaluate(UPDATE)
    says(page, "did not arrive complete. This phone goes on with the version it has")
    go_offline(page)
    page.reload()
    tap(page, "It does not get hot at all")
    no_danger(page)
    expect(page.locator("p.count")).to_be_visible()


def test_what_an_earlier_try_left_half_written_is_thrown_away(page, publish):
    install(page)
    publish(version="newer")
    page.evaluate("async () => (await caches.open('oven-check-set-newer')).put('/left-over', new Response('half'))")
    page.evaluate(UPDATE)
    let_old_worker_rest(page)
    until(page, NEWER_ALONE)
    assert page.evaluate("async () => Boolean(await caches.match('/left-over'))") is False


def test_a_clock_set_wrong_changes_nothing(page):
    install(page)
    page.clock.set_fixed_time("1999-12-31T23:00:00Z")
    go_offline(page)
    page.reload()
    tap(page, "It does not get hot at all")
    no_danger(page)
    assert 1 <= cannot_tell_the_rest(page) <= 12
