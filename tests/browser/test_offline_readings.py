"""A reading taken offline: its form, its timer, what it means, and the check that goes on with it."""

import re
from urllib.parse import parse_qsl, urlsplit

import pytest
from playwright.sync_api import expect

from tests.browser.phone import go_offline, install
from tests.browser.walking_by_hand import heading, tap
from tests.firm_builders import make_firm
from tests.household.checks_done import answers_of, at, open_page
from tests.offline.addresses import BESIDE_A_READING

pytestmark = pytest.mark.django_db(transaction=True)

ALONE = {"danger": "none"}


def fill_in_the_flashes(page):
    """35 flashes in a minute at 1000 imp/kWh are 34 intervals: 34 x 3.6e6 / 1000 / 60 = 2040 W, by the definition of
    the kilowatt-hour; the rest of the home is said to draw nothing."""
    page.get_by_label("Flashes for one kilowatt-hour").fill("1000")
    page.get_by_label("Or: flashes counted").fill("35")
    page.get_by_label("Time from the first to the last").fill("60")
    page.get_by_label("What the rest of the home draws").fill("0")
    page.keyboard.press("Tab")
    expect(page.locator(".measured")).to_contain_text("2.04 kW")


def test_a_reading_beside_a_question_goes_into_the_check_as_on_the_site(page, client):
    install(page, "/?region=de")
    go_offline(page)
    page.goto(f"{page.site}/check/?{BESIDE_A_READING}")
    asked = heading(page).inner_text()
    page.locator("main").get_by_role("link", name=re.compile("meter", re.IGNORECASE)).click()
    expect(heading(page)).not_to_have_text(asked)
    fill_in_the_flashes(page)
    expect(page.locator(".picture svg rect.hot")).to_be_visible()
    tap(page, "Use this in the check")
    expect(page.locator("p.count")).to_be_visible()
    expect(page).to_have_url(re.compile(r"/check/\?"))
    here = urlsplit(page.url)
    of_the_site = open_page(client, f"{here.path}?{here.query}")
    assert heading(page).inner_text() == of_the_site.select("h1")[0].text
    page.get_by_text("Your answers so far").click()
    expect(page.locator(".answers")).to_contain_text("2.04 kW ± 0.08, 105 % of a usual heater")
    assert dict(parse_qsl(here.query))["meter-power"] == "f35~s60~k1000~b0"


def test_what_is_typed_wrong_is_named_offline_and_comes_back_as_typed(page):
    install(page)
    go_offline(page)
    page.goto(page.site + at("/reading/run-on/", ALONE))
    page.get_by_label("Last heard running").fill("soon")
    page.get_by_role("button", name="Show what it means").click()
    expect(page.locator(".wrong")).to_have_text("“soon” is not a number we can read. Write it in digits, such as 12.5.")
    expect(page.get_by_label("Last heard running")).to_have_value("soon")


def test_the_timer_of_a_reading_runs_offline(page):
    install(page)
    go_offline(page)
    page.goto(page.site + at("/reading/run-on/", {}))
    page.locator("main a", has_text="None of these").first.click()
    page.get_by_role("button", name="I switched it off now").click()
    page.reload()
    page.get_by_role("button", name="It never ran on").click()
    expect(page.locator(".measured")).to_have_text("Silent from switch-off on")


# Seventy kelvin over what was set, and no fall: the heat does not stop.
CLIMBING = {
    "read-set": "180",
    **{f"read-time-{n}": str(20 + 5 * n) for n in range(1, 6)},
    **{f"read-shown-{n}": shown for n, shown in enumerate(("180", "200", "220", "235", "250"), 1)},
}


def test_figures_that_mean_danger_open_the_check_with_what_to_do_first(page):
    install(page)
    go_offline(page)
    page.goto(page.site + at("/reading/thermometer/", {**ALONE, "read-form": "1", **CLIMBING}))
    is_told_what_to_do_first(page)


def test_so_do_they_while_they_are_typed(page):
    install(page)
    go_offline(page)
    page.goto(page.site + at("/reading/thermometer/", ALONE))
    for name, figure in CLIMBING.items():
        page.locator(f'[name="{name}"]').fill(figure)
    page.keyboard.press("Tab")
    is_told_what_to_do_first(page)


def is_told_what_to_do_first(page):
    expect(page.get_by_role("heading", name="Do this now, in this order")).to_be_visible()
    expect(page).to_have_url(re.compile(r"/check/\?"))


def test_a_reading_for_a_firm_keeps_the_firm(page):
    make_firm(slug="hearth", email="", webhook_url="")
    trail = {"firm": "hearth", **answers_of("fan-element-open", "no-heat")}
    page.goto(page.site + at("/check/", trail))
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    go_offline(page)
    page.goto(page.site + at("/check/task/meter-test/", trail))
    fill_in_the_flashes(page)
    page.get_by_role("button", name="Show what it means").click()
    expect(page).to_have_url(re.compile("firm=hearth"))
    expect(page.get_by_role("link", name="Use this in the check")).to_have_attribute("href", re.compile("firm=hearth"))
