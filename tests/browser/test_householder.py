"""What only a browser shows: copying, titles and focus, a lost connection, and searching in one's own words.

Whole checks by touch, keyboard and without JavaScript stand in the files of those names.
"""

import pytest
from playwright.sync_api import expect

from tests.household.every_page import PAGES


def open_start(page):
    page.goto(f"{page.site}/?region=gb-eng")
    expect(page.locator("h1")).to_have_text("What is your oven doing?")


def lines_of(page):
    return page.locator("[data-lines] li:not([data-danger])")


def test_the_summary_can_be_copied(page):
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page.goto(page.site + PAGES["advice"])
    page.get_by_role("button", name="Copy these words").click()
    expect(page.get_by_text("Copied.")).to_be_visible()
    assert page.evaluate("navigator.clipboard.readText()").startswith("OVEN FAULT CHECK")


def test_without_javascript_the_summary_is_there_to_select(new_context, live_server):
    page = new_context(java_script_enabled=False).new_page()
    page.goto(live_server.url + PAGES["advice"])
    expect(page.get_by_role("button", name="Copy these words")).to_be_hidden()
    expect(page.locator("#summary")).to_contain_text("OVEN FAULT CHECK")


def test_each_step_arrives_at_its_top_with_its_heading_in_focus_and_its_title(page):
    open_start(page)
    page.get_by_role("link", name="It makes a new noise").click()
    expect(page.locator("h1")).to_be_focused()
    expect(page).to_have_title("Is there any danger? – Oven fault check")
    assert page.evaluate("window.scrollY") == 0


def test_back_and_forward_bring_every_step_again(page):
    open_start(page)
    page.get_by_role("link", name="It makes a new noise").click()
    expect(page.locator("h1")).to_have_text("Is there any danger?")
    page.get_by_role("link", name="None of these").click()
    expect(page.locator("p.count")).to_have_text("Question 1, at most 12")
    for heading in ("Is there any danger?", "What is your oven doing?"):
        page.go_back()
        expect(page.locator("h1")).to_have_text(heading)
    page.go_forward()
    page.go_forward()
    expect(page.locator("p.count")).to_have_text("Question 1, at most 12")


def test_a_page_that_does_not_arrive_says_so_and_keeps_the_answers(page):
    page.goto(page.site + PAGES["question"])
    page.context.set_offline(True)
    page.locator("main ul.bars a").nth(1).click()
    expect(page.locator("#step-status")).to_contain_text("Your answers are still here.")
    page.complaints.clear()
    page.context.set_offline(False)
    page.locator("main ul.bars a").nth(1).click()
    expect(page.locator("p.count")).to_have_text("Question 2, at most 12")


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("the oven is tripping", "It trips the power"),
        ("BROILER", "The grill does not heat, the oven does"),
        ("fishy", "There is a burning or odd smell"),
    ],
)
def test_a_line_is_found_by_words_it_does_not_show(page, typed, found):
    open_start(page)
    everything = lines_of(page).count()
    page.get_by_label("Find it in your own words").fill(typed)
    expect(lines_of(page).filter(has_text=found, visible=True)).to_be_visible()
    assert 0 < lines_of(page).filter(visible=True).count() < everything / 2


def test_no_line_moves_when_the_search_box_comes(page):
    """A person may be pressing one by then."""
    script = "**/pages/page*.js"
    page.route(script, lambda route: route.abort())
    open_start(page)
    expect(page.get_by_label("Find it in your own words")).to_be_hidden()
    before = lines_of(page).nth(1).bounding_box()
    page.complaints.clear()  # of the script that did not come
    page.unroute(script)
    page.reload()
    expect(page.get_by_label("Find it in your own words")).to_be_visible()
    assert lines_of(page).nth(1).bounding_box() == before


def test_a_search_that_sounds_dangerous_leads_to_the_danger_signs_first(page):
    open_start(page)
    page.get_by_label("Find it in your own words").fill("smoke")
    first = page.locator("[data-lines] a").filter(visible=True).first
    expect(first).to_contain_text("This could be dangerous")
    first.click()
    expect(page.locator("h1")).to_have_text("Is there any danger?")


def test_a_search_without_a_hit_shows_everything_and_says_what_to_try(page):
    open_start(page)
    everything = lines_of(page).count()
    page.get_by_label("Find it in your own words").fill("xyzzy")
    expect(page.locator("#found")).to_contain_text("No line has those words.")
    assert lines_of(page).filter(visible=True).count() == everything
