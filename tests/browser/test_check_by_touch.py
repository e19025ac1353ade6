"""A householder with a phone walks a whole check, gets lost, comes back, meets danger, and works without JavaScript."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.walking_by_hand import cannot_tell_the_rest, heading, no_danger, start, tap

pytestmark = pytest.mark.django_db(transaction=True)


def test_a_check_leads_from_the_complaint_to_advice(page, live_server):
    start(page, live_server)
    tap(page, "It does not get hot at all")
    no_danger(page)
    asked = cannot_tell_the_rest(page)
    assert 1 <= asked <= 12
    expect(page.get_by_role("heading", name="What to do now")).to_be_visible()
    expect(page.locator("main")).to_contain_text(re.compile(r"in 10 ovens that answer like this"))


def test_a_check_works_without_javascript(browser, live_server):
    context = browser.new_context(java_script_enabled=False, viewport={"width": 360, "height": 740})
    page = context.new_page()
    start(page, live_server)
    expect(page.get_by_label("Find it in your own words")).to_be_hidden()
    tap(page, "It trips the power")
    no_danger(page)
    assert 1 <= cannot_tell_the_rest(page) <= 12
    expect(page.get_by_role("heading", name="What to do now")).to_be_visible()
    context.close()


def test_a_step_is_swapped_in_place_and_the_address_is_the_trail(page, live_server):
    start(page, live_server)
    loads = []
    page.on("request", lambda request: loads.append(request.resource_type) if request.is_navigation_request() else None)
    tap(page, "It does not get hot at all")
    no_danger(page)
    expect(page.locator("p.count")).to_be_visible()
    assert loads == []
    expect(page).to_have_url(re.compile("complaint=no-heat"))
    expect(page).to_have_url(re.compile("danger=none"))
    expect(heading(page)).to_be_focused()


def test_the_back_button_takes_one_answer_back(page, live_server):
    start(page, live_server)
    tap(page, "It does not get hot at all")
    no_danger(page)
    first = heading(page).inner_text()
    tap(page, "I can’t tell")
    expect(heading(page)).not_to_have_text(first)
    page.go_back()
    expect(heading(page)).to_have_text(first)
    page.go_back()
    expect(heading(page)).to_have_text("Is there any danger?")


def test_danger_is_one_tap_away_in_the_middle_and_stops_the_check(page, live_server):
    start(page, live_server)
    tap(page, "It does not get hot at all")
    no_danger(page)
    tap(page, "Danger? Stop here")
    page.locator("main a", has_text="burning smell of plastic").click()
    expect(page.get_by_text("WARNING").first).to_be_visible()
    expect(page.get_by_role("heading", name="Do this now, in this order")).to_be_visible()
    expect(page.locator("main").get_by_text("Checks you can do yourself")).to_have_count(0)
    expect(page).to_have_url(re.compile("complaint=no-heat"))


def test_an_answer_can_be_changed_from_the_answers_so_far(page, live_server):
    start(page, live_server)
    tap(page, "It does not get hot at all")
    no_danger(page)
    first = heading(page).inner_text()
    tap(page, "I can’t tell")
    expect(heading(page)).not_to_have_text(first)
    page.get_by_text(re.compile(r"Your answers so far")).click()
    page.locator("main").get_by_role("link", name=re.compile("^Change")).last.click()
    expect(heading(page)).to_have_text(first)


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("cold", "It does not get hot at all"),
        ("tripping", "It trips the power"),
        ("burning smell", "There is a burning or odd smell"),
    ],
)
def test_the_filter_finds_what_people_type(page, live_server, typed, found):
    start(page, live_server)
    page.get_by_label("Find it in your own words").fill(typed)
    expect(page.get_by_role("link", name=found, exact=True)).to_be_visible()
    expect(page.get_by_role("link", name="The oven lamp does not work")).to_be_hidden()
    expect(page.locator("#found")).to_contain_text("Lines that fit")


def test_nothing_is_asked_of_another_host(page, live_server):
    hosts = set()
    page.on("request", lambda request: hosts.add(request.url.split("/")[2]))
    start(page, live_server)
    tap(page, "It does not get hot at all")
    no_danger(page)
    cannot_tell_the_rest(page)
    assert hosts == {live_server.url.split("/")[2]}
    assert page.context.cookies() == []
