"""The QR code is read back by an independent reader (zxing-cpp) from the very SVG a page shows."""

import re

import pytest
import zxingcpp
from PIL import Image, ImageDraw

from tests.jobsheet.sheets import summary
from triage.jobsheet.formats.qr import trail_qr

DOT = 4


def drawn(svg):
    """The picture a browser draws: one dot high strokes, as far right as each says."""
    side = int(re.search(r'd="M0 0h(\d+)', svg)[1])
    picture = Image.new("L", (side * DOT, side * DOT), 255)
    pen = ImageDraw.Draw(picture)
    x = y = 0.0
    path = re.search(r'stroke="#000" d="([^"]+)"', svg)[1]
    for command, numbers in re.findall(r"([Mmh])([-\d. ]+)", path):
        first, *second = (float(number) for number in re.findall(r"-?[\d.]+", numbers))
        if command == "h":
            box = [x * DOT, (y - 0.5) * DOT, (x + first) * DOT - 1, (y + 0.5) * DOT - 1]
            pen.rectangle(box, fill=0)
            x += first
        else:
            x, y = (first, second[0]) if command == "M" else (x + first, y + second[0])
    return picture


def read_back(svg):
    return zxingcpp.read_barcode(drawn(svg)).text


@pytest.mark.parametrize("kind", ["finished", "unfinished", "danger"])
def test_it_holds_the_address_of_the_check(kind):
    address = summary(kind)["check_url"]
    assert read_back(trail_qr(address)) == address


def test_a_very_long_check_still_fits():
    address = "https://check.example/check/?" + "&".join(f"question-{n}=answer-{n}" for n in range(110))
    assert len(address) > 2300
    assert read_back(trail_qr(address)) == address


def test_an_address_no_code_can_hold_gives_none():
    assert trail_qr("https://check.example/?" + "a" * 3000) == ""


def test_it_fits_the_strict_content_policy():
    svg = trail_qr("https://check.example/")
    assert svg.startswith("<svg ")
    assert "style" not in svg
    assert "<?xml" not in svg
