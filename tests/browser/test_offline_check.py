"""After one visit the whole check works offline: pages, changes, danger, a task; the site is asked for nothing."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.phone import CONTROLLED, go_offline, go_online, install, says, stop_worker
from tests.browser.walking_by_hand import cannot_tell_the_rest, heading, no_danger, tap
from tests.household.every_page import PAGES
from triage.web.step_header import STEP

pytestmark = pytest.mark.django_db(transaction=True)


def test_a_whole_check_offline(page):
    install(page)
    go_offline(page)
    tap(page, "It does not get hot at all")
    no_danger(page)
    first = heading(page).inner_text()
    assert 1 <= cannot_tell_the_rest(page) <= 12
    expect(page.get_by_role("heading", name="What to do now")).to_be_visible()
    page.locator("main").get_by_role("link", name=re.compile("^Change")).nth(3).click()
    expect(heading(page)).to_have_text(first)
    tap(page, "Danger? Stop here")
    page.locator("main a", has_text="burning smell of plastic").click()
    expect(page.get_by_role("heading", name="Do this now, in this order")).to_be_visible()
    expect(page.get_by_role("link", name="Call 999").first).to_be_visible()


def test_a_task_is_opened_offline(page):
    install(page)
    go_offline(page)
    page.goto(f"{page.site}{PAGES['task closed']}")
    for gate in range(page.locator("li.gate").count()):
        page.locator("li.gate").nth(gate).get_by_role("link", name="Yes", exact=True).click()
        expect(page.locator("li.gate").nth(gate).locator("[aria-current]")).to_have_text("Yes")
    expect(page.get_by_role("heading", name="What to do")).to_be_visible()


@pytest.mark.parametrize(
    "name",
    ["start", "danger", "question", "make safe", "advice", "task open", "gas smell", "reading shown", "meter task"],
)
def test_each_page_opened_offline_is_the_sites_own(page, client, name):
    page.goto(f"{page.site}{PAGES[name]}")
    words = page.locator("main").inner_text()
    page.wait_for_function(CONTROLLED)
    go_offline(page)
    answer = page.goto(f"{page.site}{PAGES[name]}")
    assert answer.from_service_worker
    assert page.locator("main").inner_text() == words
    assert "frame-ancestors 'none'" in answer.headers["content-security-policy"]
    assert answer.headers[STEP.lower()] == client.get(PAGES[name]).headers[STEP]


def test_online_too_a_step_asks_the_site_for_nothing(page):
    install(page)
    asked = []
    page.on("request", lambda request: asked.append(request) if "/check/" in request.url else None)
    tap(page, "It does not get hot at all")
    no_danger(page)
    cannot_tell_the_rest(page)
    assert asked
    assert [request.url for request in asked if not request.response().from_service_worker] == []


def test_the_worker_killed_in_between_comes_back(page):
    install(page)
    go_offline(page)
    tap(page, "It does not get hot at all")
    stop_worker(page)
    no_danger(page)
    expect(page.locator("p.count")).to_be_visible()


def test_a_page_that_needs_a_connection_leads_back_and_says_so(page):
    install(page)
    go_offline(page)
    page.goto(f"{page.site}/sheet/AB12-CD34/?token=x&region=us")
    says(page, "that page needs a connection")
    expect(page.get_by_role("link", name="Call 911").first).to_be_visible()
    page.complaints.clear()


def test_the_costs_page_says_that_it_needs_a_connection_and_leads_back_to_the_advice(page):
    install(page, PAGES["advice"])
    go_offline(page)
    advice = heading(page).inner_text()
    page.get_by_text("What it may cost").click()
    page.get_by_role("link", name="Electricity, and a repair or a new oven").click()
    says(page, "You’re offline, and the costs page needs a connection.")
    expect(heading(page)).to_have_text(advice)
    page.goto(f"{page.site}{PAGES['costs']}")  # opened by itself, with what was typed into its form
    says(page, "the costs page needs a connection")
    expect(page.get_by_text("could not be used")).to_have_count(0)
    expect(page.locator("#summary")).to_be_visible()
    page.complaints.clear()


def test_with_no_check_begun_the_energy_label_leads_back_to_the_first_page(page):
    install(page)
    go_offline(page)
    page.get_by_text("Only work out figures you have measured").click()
    page.get_by_role("link", name="The energy label").click()
    says(page, "You’re offline, and the costs page needs a connection.")
    expect(page.get_by_label("Find it in your own words")).to_be_visible()
    page.complaints.clear()


def test_answers_of_a_newer_version_are_named_and_the_rest_goes_on(page):
    install(page)
    go_offline(page)
    page.goto(f"{page.site}/check/?region=gb-eng&complaint=no-heat&danger=none&answer-of-next-year=yes")
    expect(page.get_by_text("could not be used")).to_be_visible()
    expect(page.locator("p.count")).to_be_visible()


def test_a_half_written_set_is_mended_from_the_site_and_else_the_site_answers(page):
    install(page)
    page.evaluate(
        """async () => {
          const cache = await caches.open((await caches.keys()).find((name) => name.startsWith("oven-check-set-")));
          for (const { url } of await cache.keys()) {
            if (url.includes("/offline/pages-")) await cache.put(url, new Response("{\\"half"));
            if (url.includes("/offline/pack-")) await cache.delete(url);
          }
        }"""
    )
    stop_worker(page)
    tap(page, "It does not get hot at all")
    no_danger(page)
    go_offline(page)
    stop_worker(page)
    assert 1 <= cannot_tell_the_rest(page) <= 12


def test_without_workers_the_site_answers_the_same(page):
    page.add_init_script(
        "Object.defineProperty(ServiceWorkerContainer.prototype, 'register',"
        " { value: () => Promise.reject(new Error('no')) })"
    )
    page.goto(f"{page.site}/?region=gb-eng")
    tap(page, "It does not get hot at all")
    no_danger(page)
    expect(page.locator("p.count")).to_be_visible()
    assert page.evaluate("async () => (await navigator.serviceWorker.getRegistrations()).length") == 0


def test_a_shared_text_lands_in_the_search_box_and_leaves_the_address(page):
    install(page)
    go_offline(page)
    page.goto(f"{page.site}/?shared-text=my+oven+is+cold")
    expect(page.get_by_label("Find it in your own words")).to_have_value("my oven is cold")
    expect(page.get_by_role("link", name="It does not get hot at all", exact=True)).to_be_visible()
    expect(page).not_to_have_url(re.compile("shared"))
    go_online(page)
