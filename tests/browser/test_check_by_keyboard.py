"""The keyboard alone: every line is reached by Tab, and each new step starts at its heading."""

import pytest
from playwright.sync_api import expect

from tests.browser.walking_by_hand import MOST_STEPS, heading, is_question, start

pytestmark = pytest.mark.django_db(transaction=True)


def press_until_on(page, words, key="Tab", most=90):
    for _ in range(most):
        page.keyboard.press(key)
        if page.evaluate("() => document.activeElement.textContent.trim()").startswith(words):
            return
    raise AssertionError(f"{key} never comes to {words!r}")


def test_a_whole_check_by_keyboard(page, live_server):
    start(page, live_server)
    press_until_on(page, "It does not get hot at all")
    page.keyboard.press("Enter")
    expect(heading(page)).to_have_text("Is there any danger?")
    expect(heading(page)).to_be_focused()
    press_until_on(page, "None of these")
    page.keyboard.press("Enter")
    expect(page.locator("p.count")).to_be_visible()
    for _ in range(MOST_STEPS):
        if not is_question(page):
            break
        before = heading(page).inner_text()
        expect(heading(page)).to_be_focused()
        press_until_on(page, "I can’t tell")
        page.keyboard.press("Enter")
        expect(heading(page)).not_to_have_text(before)
    expect(page.get_by_role("heading", name="What to do now")).to_be_visible()


def test_what_has_the_focus_is_always_seen(page, live_server):
    start(page, live_server)
    for _ in range(6):
        page.keyboard.press("Tab")
        width = page.evaluate(
            "() => { const s = getComputedStyle(document.activeElement);"
            " return parseFloat(s.outlineWidth) * (s.outlineStyle !== 'none'); }"
        )
        assert width >= 2
