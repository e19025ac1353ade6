"""A person at the check: taps lines by their words, or walks them with the keyboard."""

import re

from playwright.sync_api import expect

MOST_STEPS = 20
QUESTION = re.compile(r"Question \d+, at most 12")


def start(page, live_server, region="gb-eng"):
    page.goto(f"{live_server.url}/?region={region}")


def settled(page):
    """The last step is all in place: until htmx is done with it, its links are plain ones that load a whole page."""
    expect(page.locator(".htmx-request, .htmx-swapping, .htmx-settling")).to_have_count(0)


def tap(page, words):
    settled(page)
    page.get_by_role("link", name=words, exact=True).click()


def heading(page):
    return page.get_by_role("heading", level=1)


def no_danger(page):
    expect(heading(page)).to_have_text("Is there any danger?")
    settled(page)
    page.locator("main a", has_text="None of these").first.click()
    expect(heading(page)).not_to_have_text("Is there any danger?")


def is_question(page):
    return page.locator("p.count", has_text=QUESTION).count() == 1


def cannot_tell_the_rest(page):
    """Answer "I can't tell" until the questions are over; the number of questions put."""
    for asked in range(MOST_STEPS):
        if not is_question(page):
            return asked
        before = heading(page).inner_text()
        tap(page, "I can’t tell")
        expect(heading(page)).not_to_have_text(before)
    raise AssertionError("the questions never end")
