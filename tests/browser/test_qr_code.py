"""The phone's own QR codes, read back by ZXing, an independent decoder, and compared with those of segno."""

import re
from io import BytesIO

import pytest
import segno
import zxingcpp
from PIL import Image
from playwright.sync_api import expect

from tests.household.every_page import PAGES

CODE = "async (text) => (await import('/static/triage/pages/qr_code.js')).codeOf(text)"
QUIET = 4
FULL_VERSION_4 = 78
MODULE = 4
# The most bytes of a version at level L, as ISO/IEC 18004 lists them in its table of capacities (from memory).
MOST_BYTES = {
    1: 17,
    2: 32,
    5: 106,
    6: 134,
    7: 154,
    9: 230,
    10: 271,
    14: 458,
    15: 520,
    20: 858,
    25: 1273,
    32: 1952,
    40: 2953,
}


def words(length):
    sentence = "https://check.example/check/?region=gb-eng&complaint=no-heat&é="
    return (sentence * (length // len(sentence) + 1)).encode()[:length].decode("utf-8", "ignore").ljust(length)


def picture_of(rows):
    size = len(rows) + 2 * QUIET
    image = Image.new("L", (size, size), 255)
    for y, row in enumerate(rows):
        for x, dark in enumerate(row):
            if dark:
                image.putpixel((x + QUIET, y + QUIET), 0)
    return image.resize((size * MODULE, size * MODULE), Image.Resampling.NEAREST)


def read(image):
    (found,) = zxingcpp.read_barcodes(image)
    return found.text


@pytest.fixture
def code_of(page):
    page.goto(f"{page.site}/?region=gb-eng")
    return lambda text: page.evaluate(CODE, text)


@pytest.mark.parametrize("version", MOST_BYTES)
def test_a_full_code_of_each_size_is_read_back(code_of, version):
    text = "a" + words(MOST_BYTES[version] - 1)
    text = text.encode()[: MOST_BYTES[version]].decode("utf-8", "ignore").ljust(MOST_BYTES[version] - text.count("é"))
    rows = code_of(text)
    assert len(rows) == 17 + 4 * version
    assert read(picture_of(rows)) == text


def test_a_byte_more_takes_the_next_size_and_too_much_none(code_of):
    assert len(code_of("x" * 18)) == 17 + 4 * 2
    assert code_of("x" * 2954) is None


def test_every_module_of_a_full_code_is_where_segno_puts_it(code_of):
    """Full, because segno pads with one zero byte where the standard wants none."""
    text = "https://check.example/check/?region=gb-eng&complaint=no-heat&danger=none&a=bcd"
    assert len(text) == FULL_VERSION_4
    ours = code_of(text)
    theirs = [
        segno.make(text, micro=False, error="l", mode="byte", boost_error=False, mask=mask).matrix for mask in range(8)
    ]
    assert ours in [[[bool(dark) for dark in row] for row in matrix] for matrix in theirs]


def test_the_code_on_the_page_opens_the_same_check(page):
    page.goto(f"{page.site}{PAGES['advice']}")
    page.get_by_text("Save my answers").click()
    code = page.locator("#answers-code svg")
    expect(code).to_be_visible()
    shot = Image.open(BytesIO(code.screenshot()))
    assert read(shot) == page.url
    expect(page.locator("#answers-address")).to_have_text(page.url)
    other = page.context.new_page()
    other.goto(read(shot))
    expect(other.locator("h1")).to_have_text(page.locator("h1").inner_text())


def test_the_code_of_a_task_or_the_danger_signs_opens_the_check_itself(page):
    page.goto(f"{page.site}{PAGES['task open']}")
    page.get_by_text("Save my answers").click()
    expect(page.locator("#answers-address")).to_have_text(re.compile(r"/check/\?region=gb-eng&complaint=door"))
