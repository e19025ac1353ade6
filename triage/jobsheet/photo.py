"""A photo of the rating plate: decoded and encoded again here, so that nothing but the picture is kept.

Where it was taken, with what and when, and anything hidden in the file, is gone with the old encoding.
"""

from dataclasses import dataclass
from io import BytesIO

from django.utils.translation import gettext as _
from PIL import Image, UnidentifiedImageError

from triage.jobsheet.errors import FieldProblem, Refused

MAX_BYTES = 12_000_000
MAX_PIXELS = 60_000_000
MAX_SIDE_PIXELS = 1600
QUALITY = 80
KINDS = ("JPEG", "PNG", "WEBP")
# The tag Orientation (Exif 2.32, 4.6.4): what has to be done so that the picture stands upright.
ORIENTATION = 0x0112
TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}


@dataclass(frozen=True, slots=True)
class Photo:
    jpeg: bytes
    width: int
    height: int


def read_photo(file: bytes) -> Photo:
    """The picture, upright and no larger than a plate needs. Refused where the file is not such a picture."""
    if len(file) > MAX_BYTES:
        size, most = len(file) / 1_000_000, MAX_BYTES // 1_000_000
        raise _refused(
            _("This photo has %(size).0f MB, and %(most)s MB is the most. Take it again with a smaller size.")
            % {"size": size, "most": most}
        )
    try:
        with Image.open(BytesIO(file), formats=KINDS) as picture:
            return _encoded(picture)
    except (UnidentifiedImageError, Image.DecompressionBombError):
        raise _refused(_("This file is not a photo we can read. Send a JPEG, PNG or WebP picture.")) from None
    except (OSError, SyntaxError, ValueError, EOFError):
        raise _refused(_("This photo is damaged and cannot be read to its end. Take it again.")) from None


def _encoded(picture: Image.Image) -> Photo:
    if picture.width * picture.height > MAX_PIXELS:
        params = {"most": MAX_PIXELS // 1_000_000}
        raise _refused(_("This photo has more than %(most)s million dots. Take it again with a smaller size.") % params)
    picture.draft("RGB", (MAX_SIDE_PIXELS, MAX_SIDE_PIXELS))
    upright = _upright(picture).convert("RGB")
    upright.thumbnail((MAX_SIDE_PIXELS, MAX_SIDE_PIXELS))
    bare = Image.new("RGB", upright.size)
    bare.paste(upright)
    out = BytesIO()
    bare.save(out, "JPEG", quality=QUALITY)
    return Photo(out.getvalue(), bare.width, bare.height)


def _upright(picture: Image.Image) -> Image.Image:
    """The imaging library's own way writes the broken rest of the tags anew, and fails at it."""
    turn = TURNS.get(picture.getexif().get(ORIENTATION, 1))
    return picture.transpose(turn) if turn is not None else picture


def _refused(sentence: str) -> Refused:
    return Refused([FieldProblem("photo", sentence)])
