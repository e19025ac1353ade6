"""On paper: the advice on one A4 page, with the code that opens the check again and nothing only a screen needs."""

from io import BytesIO

import pytest
from playwright.sync_api import expect
from pypdf import PdfReader

from tests.household.every_page import PAGES

A4 = (595, 842)  # points


@pytest.mark.parametrize("name", ["advice", "advice with a caution", "make safe", "put right"])
def test_the_advice_is_one_a4_page(page, name):
    page.goto(f"{page.site}{PAGES[name]}")
    expect(page.locator("#answers-code svg")).to_have_count(0)  # drawn for who asks, not for everyone who reads
    printed = PdfReader(BytesIO(page.pdf(prefer_css_page_size=True, print_background=True)))
    expect(page.locator("#answers-code svg")).to_have_count(1)
    assert len(printed.pages) == 1
    width, height = printed.pages[0].mediabox.width, printed.pages[0].mediabox.height
    assert (round(width), round(height)) == A4
    words = " ".join(printed.pages[0].extract_text().split())
    assert page.locator("h1").inner_text() in words
    assert "Danger? Stop here" not in words
    assert "Read it to me" not in words


def test_the_code_is_printed_open_and_the_page_is_as_before_afterwards(page):
    page.goto(f"{page.site}{PAGES['advice']}")
    page.evaluate("() => window.dispatchEvent(new Event('beforeprint'))")
    page.emulate_media(media="print")
    expect(page.locator("#answers-code svg")).to_be_visible()
    page.emulate_media(media="screen")
    page.evaluate("() => window.dispatchEvent(new Event('afterprint'))")
    expect(page.locator("#answers-code svg")).to_be_hidden()
