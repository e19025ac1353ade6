"""Photos made to hurt: tiny files that unfold to gigabytes, files of two kinds, files that end too early."""

import struct
import tracemalloc
import zlib
from functools import partial
from io import BytesIO

import pytest
from PIL import Image

from tests.jobsheet.pictures import jpeg
from triage.jobsheet.errors import Refused
from triage.jobsheet.photo import MAX_BYTES, MAX_PIXELS, read_photo

TOO_MANY_DOTS = "more than 60 million dots"
NOT_A_PHOTO = "This file is not a photo we can read"
DAMAGED = "damaged and cannot be read to its end"
SCRIPT = b"<script>alert(1)</script>"


def chunk(kind, content):
    return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", zlib.crc32(kind + content))


def png(width, height, *more, rows=b""):
    """A PNG by hand (W3C Portable Network Graphics, chunks), so that its head may say what its body does not hold."""
    head = chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0))
    return b"\x89PNG\r\n\x1a\n" + head + b"".join(more) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")


def unfolding(kind):
    return png(8, 8, chunk(kind, b"a\0\0" + zlib.compress(b"x" * 90_000_000)))


BOMBS = {
    "dots without end": (png(65_000, 65_000), NOT_A_PHOTO),
    "just too many dots": (png(10_000, 6_001), TOO_MANY_DOTS),
    "one line as long as can be": (png(MAX_PIXELS + 1, 1), TOO_MANY_DOTS),
    "a note that unfolds": (partial(unfolding, b"zTXt"), DAMAGED),
    "a colour profile that unfolds": (partial(unfolding, b"iCCP"), DAMAGED),
    "no row of the picture": (png(2000, 2000), DAMAGED),
    "a page": (b"<html>" + SCRIPT, NOT_A_PHOTO),
    "a drawing": (b'<svg xmlns="http://www.w3.org/2000/svg"/>', NOT_A_PHOTO),
    "an archive": (b"PK\x03\x04" + bytes(200), NOT_A_PHOTO),
    "another kind of picture": (b"GIF89a" + bytes(200), NOT_A_PHOTO),
    "postscript": (b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 9999999 9999999\n", NOT_A_PHOTO),
    "nothing": (b" ", NOT_A_PHOTO),
}


@pytest.mark.parametrize("name", BOMBS)
def test_it_is_refused_in_a_sentence_and_in_little_memory(name):
    made, sentence = BOMBS[name]
    file = made() if callable(made) else made
    tracemalloc.start()
    with pytest.raises(Refused, match=sentence):
        read_photo(file)
    most = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert most < 4_000_000 + len(file)


def test_too_many_bytes_are_not_looked_at():
    with pytest.raises(Refused, match="12 MB is the most"):
        read_photo(b"\xff\xd8" + bytes(MAX_BYTES))


@pytest.mark.parametrize("hidden", [SCRIPT, b"PK\x03\x04 an archive", b"<?php system('id') ?>", b"%PDF-1.7"])
def test_of_a_file_of_two_kinds_only_the_picture_is_kept(hidden):
    plain = jpeg(80, 60)
    for file in (plain + hidden, plain[:2] + b"\xff\xfe" + struct.pack(">H", len(hidden) + 2) + hidden + plain[2:]):
        kept = read_photo(file)
        assert hidden not in kept.jpeg
        assert (kept.width, kept.height) == (80, 60)
        with Image.open(BytesIO(kept.jpeg)) as picture:
            assert picture.format == "JPEG"
            assert dict(picture.getexif()) == {}


def test_a_picture_in_a_thousand_frames_is_one_picture():
    out = BytesIO()
    frames = [Image.new("RGB", (20, 20), (n % 256, 0, 0)) for n in range(1000)]
    frames[0].save(out, "PNG", save_all=True, append_images=frames[1:])
    assert (read_photo(out.getvalue()).width, read_photo(out.getvalue()).height) == (20, 20)
