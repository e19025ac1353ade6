"""Only the picture is kept, upright and small; what is no picture gets a clear answer."""

from io import BytesIO

import pytest
from PIL import Image, ImageOps

from tests.jobsheet.pictures import jpeg
from triage.jobsheet import photo
from triage.jobsheet.errors import Refused
from triage.jobsheet.photo import read_photo

UNREADABLE = "This file is not a photo we can read. Send a JPEG, PNG or WebP picture."
DAMAGED = "This photo is damaged and cannot be read to its end. Take it again."


def opened(read):
    return Image.open(BytesIO(read.jpeg))


def test_where_and_with_what_it_was_taken_is_gone():
    file = jpeg(60, 40)
    assert b"A maker of phones" in file
    kept = read_photo(file)
    assert b"A maker of phones" not in kept.jpeg
    assert dict(opened(kept).getexif()) == {}
    assert b"Exif" not in kept.jpeg


def test_what_is_hidden_behind_the_picture_is_gone():
    assert b"<?php" not in read_photo(jpeg(60, 40) + b"<?php echo 1; ?>").jpeg


def test_a_picture_on_its_side_is_set_upright():
    kept = opened(read_photo(jpeg(80, 40, orientation=6)))
    assert kept.size == (40, 80)
    assert kept.getpixel((20, 10))[0] > 200  # red was on the left, and is on top after a quarter turn


@pytest.mark.parametrize("orientation", [0, 1, 2, 3, 4, 5, 6, 7, 8, 9])
def test_every_orientation_is_set_upright_as_the_library_itself_would(orientation):
    file = jpeg(80, 40, orientation=orientation)
    theirs, ours = ImageOps.exif_transpose(Image.open(BytesIO(file))), opened(read_photo(file))
    assert ours.size == theirs.size
    for place in ((5, 5), (ours.width - 6, 5), (5, ours.height - 6)):
        assert max(abs(a - b) for a, b in zip(ours.getpixel(place), theirs.getpixel(place), strict=True)) < 40


@pytest.mark.parametrize("tag", [b"\x01\x1e", b"\x01\x1f", b"\x01\x23", b"\x01\x3d"])
def test_a_tag_of_the_wrong_type_costs_nobody_their_photo(tag):
    """Found by `tests.attack.fuzzing`: the library fails to write such a tag anew."""
    broken = jpeg(80, 40, "WEBP", orientation=6).replace(b"\x01\x0f\x00\x02", tag + b"\x00\x02")
    assert opened(read_photo(broken)).size == (40, 80)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_each_kind_becomes_a_jpeg(kind):
    kept = read_photo(jpeg(30, 20, kind))
    assert (opened(kept).format, kept.width, kept.height) == ("JPEG", 30, 20)


def test_a_large_picture_is_made_smaller():
    assert max(opened(read_photo(jpeg(3000, 1000))).size) == 1600


@pytest.mark.parametrize(
    ("file", "sentence"),
    [
        (b"%PDF-1.7\n1 0 obj", UNREADABLE),
        (b"", UNREADABLE),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", UNREADABLE),
        (b"GIF89a" + bytes(40), UNREADABLE),
        (jpeg(200, 200)[:900], DAMAGED),
        (bytes(20_000_000), "This photo has 20 MB, and 12 MB is the most. Take it again with a smaller size."),
    ],
    ids=["pdf", "nothing", "svg", "gif", "cut short", "20 MB"],
)
def test_what_is_no_photo_is_refused_with_a_remedy(file, sentence):
    with pytest.raises(Refused) as refused:
        read_photo(file)
    assert [(p.field, p.message) for p in refused.value.problems] == [("photo", sentence)]


def test_a_small_file_that_unpacks_to_a_huge_picture_is_refused(monkeypatch):
    monkeypatch.setattr(photo, "MAX_PIXELS", 1_000_000)
    with pytest.raises(Refused, match="more than 1 million dots"):
        read_photo(jpeg(1001, 1000, "PNG"))
