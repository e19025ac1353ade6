"""Readings on the phone: tapping along at the meter, timers through a page opened again, by key, without barriers."""

import re
from datetime import UTC, datetime, timedelta

import pytest
from playwright.sync_api import expect

from tests.browser.examining import examine
from tests.household.checks_done import answers_of, at

METER = at("/check/task/meter-test/", answers_of("fan-element-open", "no-heat"))
SIX = datetime(2031, 5, 26, 18, tzinfo=UTC)
SEVEN = SIX + timedelta(hours=1)
ALONE = {"danger": "none"}
SENT = {"read-form": "1"}
FILLED = {
    "meter": {"read-flashes": "35", "read-seconds": "60", "read-impulses": "1000", "read-plate": "2200"},
    "thermometer": {
        "read-set": "180",
        **{f"read-time-{n}": str(25 + 5 * n) for n in range(1, 9)},
        **{
            f"read-shown-{n}": shown
            for n, shown in enumerate(["168", "180", "190", "178", "166", "179", "191", "176"], 1)
        },
    },
    "run-on": {"read-heard": "20", "read-stopped": "25"},
    "preheat": {"read-minutes": "35", "read-set": "200", "read-plate": "2200"},
    "gasket": {"read-top": "1", "read-top-right": "1", "read-no-bottom": "1", "cold": "yes", "supply-off": "yes"},
}
WRONG = {
    "meter": {"read-flashes": "3.5", "read-seconds": "0", "read-impulses": "0", "read-plate": "20"},
    "thermometer": {"read-set": "900", "read-time-1": "5"},
}
SHOWN = {
    **{f"{kind}, filled": at(f"/reading/{kind}/", {**ALONE, **SENT, **typed}) for kind, typed in FILLED.items()},
    **{f"{kind}, wrong": at(f"/reading/{kind}/", {**ALONE, **SENT, **typed}) for kind, typed in WRONG.items()},
    "meter task": METER,
    "gasket, gates": at("/reading/gasket/", ALONE),
}


@pytest.mark.parametrize("name", SHOWN)
def test_no_reading_has_a_barrier_or_anything_out_of_reach(page, name):
    page.goto(page.site + SHOWN[name])
    examine(page)


def stand_still(page):
    """The page's clock, moved by the test alone from now on."""
    page.clock.pause_at(SEVEN)


def test_tapping_along_counts_intervals_and_shows_the_power(page):
    """Eleven flashes, 1.8 s apart at 1000 imp/kWh: ten intervals, 3.6e6 / 1000 / 1.8 = 2000 W by the definition of the
    kilowatt-hour; the rest of the home is said to draw nothing."""
    page.clock.install(time=SIX)
    page.goto(page.site + METER)
    stand_still(page)
    page.get_by_label("Flashes for one kilowatt-hour").fill("1000")
    page.get_by_label("What the rest of the home draws").fill("0")
    flash = page.get_by_role("button", name="Flash", exact=True)
    for n in range(11):
        if n:
            page.clock.run_for(1800)
        flash.click()
    expect(page.locator("[data-tapped]")).to_have_text("Flash 11, after 18.0 seconds. The whole home: about 2000 W")
    assert page.get_by_label("Moment of each flash").input_value().split()[-2:] == ["16.2", "18.0"]
    page.clock.resume()
    use = page.get_by_role("link", name="Use this in the check")
    expect(use).to_have_attribute("href", re.compile("meter-power=k1000~x0.0_1.8.*_18.0~b0"))
    expect(page.locator(".measured")).to_contain_text("2.00 kW")
    use.click()
    page.get_by_text("Your answers so far").click()
    expect(page.get_by_text("2.00 kW ± 0.14, 103 % of a usual heater")).to_be_visible()


def test_the_counter_is_worked_by_keyboard_alone(page):
    page.clock.install(time=SIX)
    page.goto(page.site + METER)
    stand_still(page)
    flash = page.get_by_role("button", name="Flash", exact=True)
    flash.focus()
    for _ in range(6):
        page.keyboard.press("Space")
        page.clock.run_for(2000)
    expect(page.locator("[data-tapped]")).to_have_text("Flash 6, after 10.0 seconds")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.locator("[data-tapped]")).to_have_text("Flash 5, after 8.0 seconds")


def test_the_run_on_timer_goes_on_when_the_page_is_opened_again_and_asks_in_time(page):
    page.clock.install(time=SIX)
    page.goto(page.site + at("/reading/run-on/", ALONE))
    page.get_by_role("button", name="I switched it off now").click()
    expect(page.locator("[data-ask]")).to_have_text("Listen again at 1 minutes.")
    expect(page).to_have_url(re.compile("read-start="))
    page.clock.run_for(12 * 60_000)
    page.reload()
    expect(page.locator("[data-elapsed]")).to_contain_text("12 min")
    expect(page.locator("[data-ask]")).to_have_text("Listen now: is the fan still running?")
    page.get_by_role("button", name="It still runs").click()
    expect(page.locator("[data-ask]")).to_have_text("Listen again at 15 minutes.")
    page.clock.run_for(10 * 60_000)
    page.get_by_role("button", name="It has stopped").click()
    heard, stopped = page.get_by_label("Last heard running"), page.get_by_label("First found still")
    assert (round(float(heard.input_value())), round(float(stopped.input_value()))) == (12, 22)
    page.clock.run_for(1000)
    expect(page.locator(".measured")).to_contain_text("found still at")


def test_a_fan_that_never_ran_on_is_said_with_one_button_whatever_was_pressed_before(page):
    page.clock.install(time=SIX)
    page.goto(page.site + at("/reading/run-on/", ALONE))
    page.get_by_role("button", name="I switched it off now").click()
    page.clock.run_for(60_000)
    page.get_by_role("button", name="It still runs").click()
    page.get_by_role("button", name="It never ran on").click()
    heard, stopped = page.get_by_label("Last heard running"), page.get_by_label("First found still")
    assert (heard.input_value(), stopped.input_value()) == ("0.0", "0.0")
    page.clock.run_for(1000)
    expect(page.locator(".measured")).to_have_text("Silent from switch-off on")
    use = page.get_by_role("link", name="Use this in the check")
    expect(use).to_have_attribute("href", re.compile("fan-run-on=h0.0~s0.0"))


def test_one_reading_too_many_is_told_and_no_row_comes_after_it(page):
    rows = {f"read-time-{n}": str(n) for n in range(1, 61)} | {f"read-shown-{n}": "170" for n in range(1, 61)}
    page.clock.install(time=SIX)
    page.goto(page.site + at("/reading/thermometer/", {**ALONE, **SENT, "read-set": "180", **rows}))
    stand_still(page)
    page.get_by_role("button", name="I switched it on now").click()
    page.clock.run_for(61 * 60_000)
    read_now = page.get_by_role("button", name="I read it now")
    read_now.click()
    page.get_by_label("Temperature of reading 61", exact=True).fill("171")
    read_now.click()
    page.clock.run_for(1000)
    expect(page.locator("#reading-result")).to_contain_text("There are more readings than can be used. Keep up to 60")
    assert page.get_by_label("Minutes of reading 61", exact=True).input_value() == "61.0"
    expect(page.get_by_label("Minutes of reading 62", exact=True)).to_have_count(0)


def test_without_storage_the_address_alone_keeps_the_start(page):
    page.add_init_script("Object.defineProperty(window, 'localStorage', { get() { throw new Error('no storage') } })")
    page.clock.install(time=SIX)
    page.goto(page.site + at("/reading/run-on/", ALONE))
    page.get_by_role("button", name="I switched it off now").click()
    page.clock.run_for(5 * 60_000)
    page.reload()
    expect(page.locator("[data-elapsed]")).to_contain_text("5 min")


def test_a_preheat_that_does_not_come_is_noted_as_such(page):
    page.clock.install(time=SIX)
    page.goto(page.site + at("/reading/preheat/", ALONE))
    stand_still(page)
    page.get_by_role("button", name="I switched it on now").click()
    page.clock.run_for(45 * 60_000)
    expect(page.locator("[data-ask]")).to_contain_text("Long enough: turn the oven off")
    page.get_by_role("button", name="Not hot yet").click()
    assert page.get_by_label("Time it took").input_value() == "45.0"
    expect(page.get_by_label("It was not hot by then")).to_be_checked()


def test_each_press_makes_a_row_with_its_time_and_rows_never_run_out(page):
    page.clock.install(time=SIX)
    page.goto(page.site + at("/reading/thermometer/", ALONE))
    stand_still(page)
    page.get_by_role("button", name="I switched it on now").click()
    for n in range(1, 9):
        page.clock.run_for(5 * 60_000)
        page.get_by_role("button", name="I read it now").click()
        shown = page.get_by_label(f"Temperature of reading {n}", exact=True)
        expect(shown).to_be_focused()
        shown.fill(str(170 + n))
    assert page.get_by_label("Minutes of reading 8", exact=True).input_value() == "40.0"
    page.clock.resume()
    page.get_by_label("Heat that was set").fill("180")
    page.get_by_role("button", name="Show what it means").click()
    expect(page.locator(".picture figcaption")).to_contain_text("Readings from 171 °C to 178 °C")


def test_without_javascript_the_same_form_tells_the_same(new_context, live_server):
    page = new_context(java_script_enabled=False).new_page()
    page.goto(live_server.url + at("/reading/gasket/", {**ALONE, "cold": "yes", "supply-off": "yes"}))
    expect(page.locator("[data-counter], [data-clock]")).to_have_count(0)
    page.get_by_label("top", exact=True).check()
    page.get_by_label("top right").check()
    page.get_by_role("button", name="Show what it means").click()
    expect(page.locator(".measured")).to_have_text("Leaks at: top, top right")
    expect(page.get_by_label("top right")).to_be_checked()
