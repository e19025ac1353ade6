"""A visit booked through a firm's own page on another site, both ways, and what the frame refuses.

The page is the demo's, opened as `localhost`, the check in it as `127.0.0.1`: two sites to the browser, which gives the
frame neither cookies nor storage.
"""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.examining import WCAG, assert_no_barriers_by_day_and_night, take_pictures, too_small
from tests.browser.phone import POLL, POLLS
from tests.pack_texts import fault_name
from tests.running_demo import demo, free_port, words_until_up

FAN_ELEMENT = fault_name("fan-element-open")

CHECK = (
    "check/?region=gb-eng&firm=kettlewick&complaint=no-heat&danger=none"
    "&display-state=time-normal&function-pattern=fan-fails&when-it-happens=always"
)
KEEP_EVENTS = """() => {
  window.told = {};
  for (const name of ["oven-check-summary", "oven-check-sent"])
    document.addEventListener(name, (event) => { window.told[name] = event.detail; });
}"""


@pytest.fixture(scope="module")
def port(tmp_path_factory):
    number = free_port()
    with demo(number, tmp_path_factory.mktemp("demo")) as process:
        words_until_up(process)
        yield number


@pytest.fixture
def shop(context, port):
    """The firm's page; anything the browser reports as an error fails the test, unless the test expects it."""
    page = context.new_page()
    page.expected = "nothing"
    complaints = []
    page.on("console", lambda message: complaints.append(message.text) if message.type == "error" else None)
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.site = f"http://localhost:{port}/booking-page/"
    page.check = f"http://127.0.0.1:{port}/"
    yield page
    assert [complaint for complaint in complaints if page.expected not in complaint] == []


def inside(page):
    return page.frame_locator("oven-fault-check iframe")


def frame_of(page):
    expect(inside(page).locator("html.framed")).to_be_attached()
    (frame,) = [frame for frame in page.frames if frame != page.main_frame]
    return frame


def go(page, address):
    """The frame at another page of the check, greeted by the page around it."""
    frame_of(page).goto(page.check + address)
    return frame_of(page)


def heights(page):
    body = "Math.ceil(document.body.getBoundingClientRect().height)"
    return page.locator("iframe").bounding_box()["height"], frame_of(page).evaluate(body)


def fits(page):
    """The height of both, once they agree: what is in the frame may still be growing when it is first measured."""
    for _ in range(POLLS):
        outer, inner = heights(page)
        if outer == inner:
            return inner
        page.wait_for_timeout(POLL)
    raise AssertionError(f"the frame is {outer} pixels high and what it shows {inner}")


def test_the_summary_goes_into_the_firms_own_form_and_is_posted(shop):
    shop.goto(shop.site)
    shop.evaluate(KEEP_EVENTS)
    inside(shop).get_by_role("link", name="It does not get hot at all").first.click()
    expect(inside(shop).locator("h1")).to_have_text("Is there any danger?")
    go(shop, CHECK)
    expect(inside(shop).get_by_role("link", name="Send this to")).to_be_hidden()
    inside(shop).get_by_role("button", name="Book with this").click()
    expect(shop.locator('[name="oven_check"]')).to_have_value(re.compile("^OVEN FAULT CHECK"))
    expect(inside(shop).get_by_text("The summary is in the booking form.")).to_be_visible()
    told = shop.evaluate("window.told['oven-check-summary']")
    assert told["band"] == "qualified"
    assert told["heading"] == "This is a job for an appliance engineer"
    assert told["address"] == shop.check + CHECK
    shop.get_by_label("Name").fill("Wren Abelard")
    shop.get_by_label("Telephone").fill("01632 960114")
    shop.get_by_role("button", name="Ask for a visit").click()
    expect(shop.locator("h1")).to_have_text("Thank you, Wren Abelard")
    expect(shop.locator("#oven-check")).to_contain_text(FAN_ELEMENT)
    assert "\r\n".join(told["text"].splitlines()) == "\r\n".join(
        shop.locator("#oven-check").text_content().splitlines()
    )


def test_the_frame_asks_whom_to_call_itself_and_keeps_nothing_in_the_browser(shop, context):
    shop.goto(f"{shop.site}in-the-frame/")
    shop.evaluate(KEEP_EVENTS)
    go(shop, CHECK)
    expect(inside(shop).get_by_role("button", name="Book with this")).to_be_hidden()
    shop.expected = "422"  # the browser reports the answer to a form that was not complete
    inside(shop).get_by_role("link", name="Send this to Kettlewick").click()
    inside(shop).get_by_role("button", name="Send it to").click()
    expect(inside(shop).get_by_role("alert")).to_contain_text("Give a name the repairer can ask for.")
    inside(shop).get_by_label("Your name").fill("Zoë 🦉 שלום")
    inside(shop).get_by_label("Telephone").fill("01632 960199")
    inside(shop).get_by_label("I agree to this").check()
    inside(shop).get_by_role("button", name="Send it to").click()
    expect(inside(shop).locator("h1")).to_have_text("Sent to Kettlewick Oven Repairs")
    reference = inside(shop).locator(".reference strong").inner_text()
    shop.wait_for_function("() => window.told['oven-check-sent']")
    assert shop.evaluate("window.told['oven-check-sent']") == {"reference": reference}
    inside(shop).get_by_text("What is kept").click()
    expect(inside(shop).get_by_text("Zoë 🦉 שלום")).to_be_visible()
    assert context.cookies() == []
    inside(shop).get_by_role("link", name="Erase this").click()
    inside(shop).get_by_role("button", name="Erase it").click()
    expect(inside(shop).locator("h1")).to_have_text("This was erased")


def test_a_plain_frame_without_a_script_of_ours_hands_over_by_itself(shop, context):
    """As triage/embed/README.md promises it: a fixed height, and the frame asks whom to call."""
    shop.goto(f"{shop.site}plain-frame/")
    plain = shop.frame_locator("iframe")
    expect(plain.locator("h1")).to_have_text("Is there any danger?")
    assert shop.locator("script, oven-fault-check").count() == 0
    (frame,) = [frame for frame in shop.frames if frame != shop.main_frame]
    frame.goto(shop.check + CHECK)
    expect(plain.get_by_role("button", name="Book with this")).to_be_hidden()
    plain.get_by_role("link", name="Send this to Kettlewick").click()
    expect(plain.get_by_text("Call-out, with the first half hour")).to_be_visible()
    plain.get_by_label("Your name").fill("Wren Abelard")
    plain.get_by_label("Telephone").fill("01632 960114")
    plain.get_by_label("I agree to this").check()
    plain.get_by_role("button", name="Send it to").click()
    expect(plain.locator("h1")).to_have_text("Sent to Kettlewick Oven Repairs")
    assert context.cookies() == []
    assert shop.locator("iframe").evaluate("frame => frame.getAttribute('height')") == "800"


def test_storage_is_refused_to_the_frame_and_nothing_minds(shop):
    shop.goto(shop.site)
    frame = frame_of(shop)
    refused = frame.evaluate("() => { try { return String(localStorage.length) } catch (error) { return error.name } }")
    assert refused == "SecurityError"
    inside(shop).get_by_role("link", name="It does not get hot at all").first.click()
    inside(shop).get_by_role("link", name="None of these").click()
    expect(inside(shop).locator(".count")).to_contain_text("Question")


def test_the_frame_is_as_high_as_what_it_shows_and_shrinks_again(shop):
    shop.goto(shop.site)
    first = fits(shop)
    go(shop, CHECK)
    advice = fits(shop)
    go(shop, "check/?region=gb-eng&firm=kettlewick&complaint=no-heat&danger=none")
    question = fits(shop)
    assert question < first < advice
    box = inside(shop).get_by_role("link", name="Danger? Stop here").bounding_box()
    frame = shop.locator("iframe").bounding_box()
    assert box["y"] - frame["y"] < 200


def test_the_firms_colour_is_on_the_page(shop):
    shop.goto(shop.site)
    link = inside(shop).locator("h1 ~ p, .top a").first
    expect(link).to_be_visible()
    colour = "getComputedStyle(document.documentElement).getPropertyValue('--heat').trim()"
    assert frame_of(shop).evaluate(colour) == "#5b3f8c"
    take_pictures(shop, "booking page")


def test_another_origin_cannot_show_it(shop):
    """The same page under a name the firm did not list."""
    shop.expected = "frame-ancestors"
    with shop.expect_console_message(lambda message: shop.expected in message.text):
        shop.goto(shop.site.replace("localhost", "127.0.0.1"))
    expect(shop.locator("iframe")).to_be_attached()
    assert inside(shop).get_by_text("What is your oven doing?").count() == 0


def test_messages_of_other_senders_and_kinds_are_ignored(shop):
    shop.goto(shop.site)
    height = fits(shop)
    shop.evaluate("() => window.postMessage({ ovenCheck: 1, type: 'height', height: 5 }, '*')")
    shop.evaluate("() => window.postMessage({ ovenCheck: 1, type: 'summary', text: 'forged' }, '*')")
    for told in ("null", "7", "'height'", "{ ovenCheck: 2, type: 'height', height: 5 }", "{ ovenCheck: 1, type: 'x' }"):
        frame_of(shop).evaluate(f"() => window.parent.postMessage({told}, '*')")
    frame_of(shop).evaluate("() => window.parent.postMessage({ ovenCheck: 1, type: 'height', height: 'tall' }, '*')")
    shop.wait_for_timeout(300)
    assert heights(shop) == (height, height)
    expect(shop.locator('[name="oven_check"]')).to_have_value("")


def test_the_frame_listens_to_nobody_but_the_page_around_it(shop):
    """A greeting from the frame itself, and from the page with another version: the offer stays as it was."""
    shop.goto(f"{shop.site}in-the-frame/")
    frame = go(shop, CHECK)
    frame.evaluate("() => window.postMessage({ ovenCheck: 1, type: 'hello', takesSummary: true }, '*')")
    for told in (
        "null",
        "{ ovenCheck: 2, type: 'hello', takesSummary: true }",
        "{ type: 'hello', takesSummary: true }",
    ):
        shop.evaluate(f"() => document.querySelector('iframe').contentWindow.postMessage({told}, '*')")
    shop.wait_for_timeout(300)
    expect(inside(shop).get_by_role("link", name="Send this to")).to_be_visible()
    expect(inside(shop).get_by_role("button", name="Book with this")).to_be_hidden()


def test_opened_by_itself_a_check_for_a_firm_speaks_to_nobody(shop):
    shop.goto(shop.check + CHECK)
    expect(shop.get_by_role("link", name="Send this to Kettlewick")).to_be_visible()
    expect(shop.locator("html.framed")).to_have_count(0)


def test_the_form_and_the_page_after_it_have_no_barrier(shop):
    shop.expected = "422"
    shop.goto(shop.check + CHECK.replace("check/?", "check/hand-over/?"))
    take_pictures(shop, "hand-over")
    no_barrier(shop)
    shop.get_by_role("button", name="Send it to").click()
    expect(shop.get_by_role("alert")).to_be_visible()
    no_barrier(shop)
    shop.get_by_label("Your name").fill("Wren Abelard")
    shop.get_by_label("E-mail").fill("wren@home.example")
    shop.get_by_label("I agree to this").check()
    shop.get_by_role("button", name="Send it to").click()
    expect(shop.locator("h1")).to_have_text("Sent to Kettlewick Oven Repairs")
    no_barrier(shop)
    shop.get_by_role("link", name="Erase this").click()
    no_barrier(shop)


def no_barrier(page):
    page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
    assert_no_barriers_by_day_and_night(page, WCAG)
    for width in (320, 360, 1280):
        page.set_viewport_size({"width": width, "height": 740})
        assert page.evaluate("document.documentElement.scrollWidth <= document.documentElement.clientWidth"), width
        assert too_small(page) == [], width
