"""What the phone adds has no barrier either: axe-core's WCAG 2.2 rules by day and by night, and nothing runs off."""

import pytest
from playwright.sync_api import expect

from tests.browser.examining import ON_LOOKS, WCAG, barriers
from tests.browser.phone import go_offline, go_online, says
from tests.browser.test_offline_hand_over import fill_in, firm, ignore_offline_errors, open_form, send, trail  # noqa: F401
from tests.browser.test_read_aloud import ENGLISH, VOICES
from tests.household.every_page import PAGES

pytestmark = pytest.mark.django_db(transaction=True)

SIZES = {"phone": (360, 740), "narrow phone": (320, 640), "desk": (1280, 800)}
LEAST = 48


def examine(page, keep_picture, name):
    for scheme, rules in (("light", WCAG), ("dark", ON_LOOKS)):
        page.emulate_media(color_scheme=scheme)
        assert barriers(page, rules) == []
        for size, (width, height) in SIZES.items():
            page.set_viewport_size({"width": width, "height": height})
            assert page.evaluate("() => document.documentElement.scrollWidth") <= width
            keep_picture(page, f"{name} {size} {scheme}")
    page.set_viewport_size({"width": 360, "height": 740})


@pytest.fixture
def keep_picture():
    """Pictures for a person to look at, in a folder that git ignores."""

    def keep(page, name):
        page.screenshot(path=f".shots/{name.replace(' ', '-')}.png")

    return keep


def heights(page, selector):
    boxes = [element.bounding_box() for element in page.locator(selector).all()]
    return [box["height"] for box in boxes if box]


def test_a_hand_over_that_waits_and_one_that_was_sent(page, firm, keep_picture):  # noqa: F811
    open_form(page, firm)
    go_offline(page)
    fill_in(page)
    send(page, firm)
    says(page, "saved on this phone")
    examine(page, keep_picture, "waiting")
    assert min(heights(page, "#outbox button, #outbox summary")) >= LEAST
    go_online(page)
    says(page, "Reference")
    page.locator("#outbox").evaluate("(list) => { list.open = true }")
    examine(page, keep_picture, "sent")
    ignore_offline_errors(page)


def test_a_hand_over_that_needs_its_owner(page, firm, keep_picture):  # noqa: F811
    open_form(page, firm)
    go_offline(page)
    send(page, firm)
    says(page, "saved on this phone")
    go_online(page)
    expect(page.locator("#outbox")).to_contain_text("could not be taken as it is")
    page.locator("#outbox").evaluate("(list) => { list.open = true }")
    examine(page, keep_picture, "refused")
    page.complaints.clear()


def test_the_answers_code_the_timer_and_the_voice(page, keep_picture):
    page.add_init_script(VOICES % ENGLISH)
    page.goto(f"{page.site}{PAGES['task closed']}")
    page.locator("#timer summary").click()
    page.get_by_role("button", name="Start", exact=True).click()
    page.locator("#save-answers summary").click()
    expect(page.locator("#answers-code svg")).to_be_visible()
    page.get_by_role("button", name="Read it to me").click()
    examine(page, keep_picture, "task")
    assert min(heights(page, ".foot button, .foot summary, .foot input, .read")) >= LEAST


@pytest.mark.parametrize("name", ["start", "question", "advice", "make safe"])
def test_each_main_page_as_the_phone_makes_it(page, keep_picture, name):
    page.add_init_script(VOICES % ENGLISH)
    page.goto(f"{page.site}{PAGES[name]}")
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    go_offline(page)
    page.reload()
    expect(page.locator("[data-read]")).to_be_visible()
    examine(page, keep_picture, f"offline {name}")


def test_forced_colours_show_the_voice_and_the_code(page):
    page.add_init_script(VOICES % ENGLISH)
    page.emulate_media(forced_colors="active")
    page.goto(f"{page.site}{PAGES['advice']}")
    page.locator("#save-answers summary").click()
    assert barriers(page, WCAG) == []
