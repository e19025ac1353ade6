"""The timer counts from a moment that is kept: a locked phone, a new page and a changed clock do not stop it."""

from datetime import UTC, datetime

import pytest
from playwright.sync_api import expect

from tests.browser.phone import CONTROLLED, until
from tests.household.checks_done import at
from tests.household.every_page import PAGES

NOTES = "async () => (await (await navigator.serviceWorker.ready).getNotifications()).map((note) => note.title)"

COUNT_NOTES = """window.shown = [];
const show = ServiceWorkerRegistration.prototype.showNotification;
ServiceWorkerRegistration.prototype.showNotification = async function (words, options) {
  await show.call(this, words, options);
  window.shown.push(words);
};"""
EARLIER = int(datetime(2030, 5, 6, 17, 50, tzinfo=UTC).timestamp())


@pytest.fixture
def timed(page):
    """Its clock stands at six and is moved by the test alone."""
    page.clock.install(time="2030-05-06T17:00:00Z")
    page.goto(f"{page.site}{PAGES['task closed']}")
    page.clock.pause_at("2030-05-06T18:00:00Z")
    page.locator("#timer summary").click()
    return page


def time_shown(page):
    return page.locator("#timer [data-time]")


def start(page, minutes=0):
    page.get_by_label("Tell me after so many minutes").fill(str(minutes))
    page.get_by_role("button", name="Start", exact=True).click()


def test_it_goes_on_through_a_reload_and_on_other_pages(timed):
    start(timed)
    timed.clock.run_for(75_000)
    expect(time_shown(timed)).to_have_text("1 min 15 s")
    timed.reload()
    expect(time_shown(timed)).to_have_text("1 min 15 s")
    timed.goto(f"{timed.site}/?region=gb-eng")
    expect(timed.locator("#timer")).to_be_visible()
    timed.clock.run_for(10_000)
    expect(time_shown(timed)).to_have_text("1 min 25 s")


def test_a_locked_phone_loses_no_time_and_the_end_is_announced_once(timed):
    start(timed, minutes=30)
    timed.clock.set_system_time("2030-05-06T18:31:00Z")
    timed.clock.run_for(1000)
    expect(timed.locator("#timer-status")).to_have_text("The time is over. Minutes: 30.")
    expect(timed.locator("#timer-status")).to_have_attribute("role", "status")
    timed.reload()
    expect(time_shown(timed)).to_have_text("31 min 1 s")
    expect(timed.locator("#timer-status")).to_be_empty()


def test_stop_shows_what_it_came_to(timed):
    start(timed)
    timed.clock.run_for(62_000)
    timed.get_by_role("button", name="Stop", exact=True).click()
    expect(timed.locator("#timer-status")).to_have_text("1 min 2 s")
    timed.reload()
    expect(time_shown(timed)).to_be_empty()


def test_a_clock_set_back_is_said_and_the_timer_begins_again(timed):
    start(timed)
    timed.clock.set_system_time("2030-05-06T17:00:00Z")
    timed.clock.run_for(1000)
    expect(timed.locator("#timer-status")).to_contain_text("clock was changed")
    timed.clock.run_for(5000)
    expect(time_shown(timed)).to_have_text("0 min 5 s")


def test_it_is_only_where_there_is_something_to_wait_for(page):
    page.goto(f"{page.site}{PAGES['question']}")
    expect(page.locator("#timer")).to_be_hidden()


def test_without_storage_it_still_counts_on_its_page(page):
    page.add_init_script("Object.defineProperty(window, 'localStorage', { get() { throw new Error('no') } })")
    page.clock.install(time="2030-05-06T18:00:00Z")
    page.goto(f"{page.site}{PAGES['task closed']}")
    page.locator("#timer summary").click()
    start(page)
    page.clock.run_for(5000)
    expect(time_shown(page)).to_have_text("0 min 5 s")


def test_a_notification_comes_only_where_it_is_allowed(timed):
    timed.context.grant_permissions(["notifications"])
    timed.wait_for_function(CONTROLLED)
    start(timed, minutes=1)
    timed.clock.run_for(61_000)
    expect(timed.locator("#timer-status")).to_have_text("The time is over. Minutes: 1.")
    timed.clock.resume()
    until(timed, f"async () => (await ({NOTES})()).length > 0")  # the worker shows it a moment after the page says it
    assert timed.evaluate(NOTES) == ["The time is over. Minutes: 1."]


def test_a_look_at_a_reading_that_is_due_is_notified_once(page):
    page.add_init_script(COUNT_NOTES)
    page.context.grant_permissions(["notifications"])
    page.clock.install(time="2030-05-06T18:00:00Z")
    page.goto(page.site + at("/reading/run-on/", {"danger": "none"}))
    page.wait_for_function(CONTROLLED)
    page.get_by_role("button", name="I switched it off now").click()
    page.clock.run_for(50_000)
    assert page.evaluate("window.shown") == []
    page.clock.run_for(90_000)
    page.wait_for_function("() => window.shown.length")
    assert page.evaluate(NOTES) == ["Listen now: is the fan still running?"]
    page.get_by_role("button", name="It still runs").click()
    page.clock.run_for(200_000)
    page.wait_for_function("() => window.shown.length > 1")
    assert page.evaluate("window.shown") == ["Listen now: is the fan still running?"] * 2


def test_who_opens_a_reading_at_a_look_that_is_due_is_not_notified(page):
    page.add_init_script(COUNT_NOTES)
    page.context.grant_permissions(["notifications"])
    page.clock.install(time="2030-05-06T18:00:00Z")
    page.goto(page.site + at("/reading/run-on/", {"danger": "none", "read-start": EARLIER}))
    page.wait_for_function(CONTROLLED)
    expect(page.locator("[data-ask]")).to_have_text("Listen now: is the fan still running?")
    page.clock.run_for(61_000)
    assert page.evaluate("window.shown") == []


def test_permission_is_asked_for_on_a_tap_alone(page):
    page.add_init_script(
        "window.asked = 0; Notification.requestPermission = async () => { window.asked += 1; return 'denied'; };"
        "Object.defineProperty(Notification, 'permission', { get: () => (window.asked ? 'denied' : 'default') });"
    )
    page.goto(f"{page.site}{PAGES['task closed']}")
    page.locator("#timer summary").click()
    start(page, minutes=1)
    assert page.evaluate("() => window.asked") == 0
    page.get_by_role("button", name="Show a notification too").click()
    assert page.evaluate("() => window.asked") == 1
    expect(page.get_by_role("button", name="Show a notification too")).to_be_hidden()
