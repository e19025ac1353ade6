"""What a firm's page may say on the element or on the script, and where the frame then begins."""

from urllib.parse import parse_qs, urlsplit

import pytest
from playwright.sync_api import expect

from tests.firm_builders import make_firm

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def firm(live_server):
    return make_firm(region="ie", accent="#5b3f8c", origins=[live_server.url])


def shown(page, firm, element, on_script=""):
    """The firm's page with this element; what the console warned of, and the addresses the frame was led through."""
    warned, led = [], []
    page.on("console", lambda message: warned.append(message.text) if message.type == "warning" else None)
    page.on("request", lambda request: led.append(request.url) if request.resource_type == "document" else None)
    loader = f'<script src="{page.site}/embed/{firm.slug}/loader.js" {on_script}></script>'
    whole = f"<!doctype html><html lang=en><title>Book</title><body>{element}{loader}</body></html>"
    page.route("**/shop/", lambda route: route.fulfill(body=whole, content_type="text/html; charset=utf-8"))
    page.goto(f"{page.site}/shop/")
    expect(page.frame_locator("oven-fault-check iframe").locator("html.framed")).to_be_attached()
    return warned, [parse_qs(urlsplit(address).query) for address in led[1:]]


def where(told):
    """Of an address: the names that matter here, once each."""
    return {name: values[0] for name, values in told.items() if name in ("region", "complaint", "lang")}


@pytest.mark.parametrize(
    ("element", "on_script"),
    [
        ('<oven-fault-check complaint="no-heat" region="us"></oven-fault-check>', ""),
        ("", 'data-complaint="no-heat" data-region="us"'),
    ],
)
def test_place_and_complaint_are_where_it_begins(page, firm, element, on_script):
    warned, (asked, begins) = shown(page, firm, element, on_script)
    assert where(asked) == where(begins) == {"region": "us", "complaint": "no-heat"}
    expect(page.frame_locator("iframe").locator("h1")).to_have_text("Is there any danger?")
    assert warned == []


def test_without_a_word_it_begins_at_the_first_page_in_the_firms_place_and_colour(page, firm):
    warned, (asked, begins) = shown(page, firm, "")
    assert (where(asked), where(begins)) == ({}, {"region": "ie"})
    colour = "getComputedStyle(document.documentElement).getPropertyValue('--heat').trim()"
    assert page.frames[1].evaluate(colour) == "#5b3f8c"
    assert warned == []


def test_a_place_or_complaint_nobody_knows_still_shows_the_check(page, firm):
    element = '<oven-fault-check complaint="flies-away" region="atlantis"></oven-fault-check>'
    _warned, (_asked, begins) = shown(page, firm, element)
    assert "complaint" not in begins
    expect(page.frame_locator("iframe").locator("h1")).to_have_text("What is your oven doing?")


@pytest.mark.parametrize("language", ["en", "EN", "en-GB", " en "])
def test_a_language_the_site_has_is_passed_on(page, firm, language):
    warned, (asked, _begins) = shown(page, firm, f'<oven-fault-check lang="{language}"></oven-fault-check>')
    assert where(asked) == {"lang": "en"}
    assert warned == []


@pytest.mark.parametrize("language", ["fr", "english", "x&amp;y=<b>", "de-CH"])
def test_a_language_it_has_not_is_english_and_the_console_says_so(page, firm, language):
    warned, (asked, _begins) = shown(page, firm, f'<oven-fault-check lang="{language}"></oven-fault-check>')
    assert where(asked) == {"lang": "en"}
    (sentence,) = warned
    assert sentence.startswith('oven-fault-check: there is no translation into "')
    assert sentence.endswith('yet, so the check is in "en". It has: en.')
    assert page.frame_locator("iframe").locator("html").get_attribute("lang") == "en"
