"""Pictures as phones send them, made by the imaging library itself."""

from io import BytesIO

from PIL import Image

MAKER, ORIENTATION, GPS = 0x010F, 0x0112, 0x8825


def jpeg(width, height, kind="JPEG", **exif):
    """A picture, half red and half blue; `exif` gives its orientation and where it was taken."""
    picture = Image.new("RGB", (width, height), "red")
    picture.paste("blue", (width // 2, 0, width, height))
    result = Image.Exif()
    result[MAKER] = "A maker of phones"
    result[ORIENTATION] = exif.get("orientation", 1)
    result.get_ifd(GPS)[2] = (52.0, 30.0, 7.0)
    out = BytesIO()
    picture.save(out, kind, exif=result)
    return out.getvalue()
