"""A firm's colour on these pages: whether it can be read there, and the nearest one that can.

Contrast is the ratio of WCAG 2.2. A firm names one colour, for the light page; the dark page, and letters as small
as the text, take the nearest one that is clear enough there, so that nobody has to choose four.
"""

from dataclasses import dataclass

from django.utils.translation import gettext as _

LIGHT = ("#fbf9f4", "#f2eee5")  # the grounds of oven.css, light and dark
DARK = ("#13100e", "#1f1915")
MIN_CONTRAST = 4.5
MIN_TEXT_CONTRAST = 7.0
STEPS = 255


@dataclass(frozen=True, slots=True)
class ContrastError:
    """Why a colour cannot be taken, and the nearest one that can."""

    message: str
    nearest: str


@dataclass(frozen=True, slots=True)
class Shades:
    """One colour as the pages use it: for lines and large things, and for text."""

    accent: str
    text: str


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours written as #rrggbb, from 1 to 21."""
    darker, lighter = sorted((_luminance(one), _luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def nearest_accessible(colour: str, grounds: tuple[str, ...], least: float = MIN_CONTRAST) -> str:
    """The colour itself where it stands out from every ground, else the first that does on its way to black or white,
    whichever stands out more."""
    end = max(("#000000", "#ffffff"), key=lambda pole: contrast(pole, grounds[0]))
    mixtures = (_mixed(colour, end, step / STEPS) for step in range(STEPS + 1))
    return next(mixed for mixed in mixtures if all(contrast(mixed, ground) >= least for ground in grounds))


def contrast_error(colour: str) -> ContrastError | None:
    """None where a firm may use the colour, which is written as #rrggbb."""
    nearest = nearest_accessible(colour, LIGHT)
    if nearest == colour:
        return None
    params = {
        "colour": colour,
        "found": f"{int(10 * min(contrast(colour, ground) for ground in LIGHT)) / 10:.1f}",
        "least": f"{MIN_CONTRAST:.1f}",
        "nearest": nearest,
    }
    sentence = _(
        "%(colour)s is too pale to be read on the page: its contrast is %(found)s to 1, the least is %(least)s to 1."
        " The nearest colour that can be read is %(nearest)s."
    )
    return ContrastError(sentence % params, nearest)


def light_shades(colour: str) -> Shades:
    return Shades(nearest_accessible(colour, LIGHT), nearest_accessible(colour, LIGHT, MIN_TEXT_CONTRAST))


def dark_shades(colour: str) -> Shades:
    return Shades(nearest_accessible(colour, DARK), nearest_accessible(colour, DARK, MIN_TEXT_CONTRAST))


def _parts(colour: str) -> tuple[int, ...]:
    return tuple(bytes.fromhex(colour[1:]))


def _luminance(colour: str) -> float:
    red, green, blue = (_linear(part / 255) for part in _parts(colour))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(part: float) -> float:
    return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4


def _mixed(colour: str, end: str, share: float) -> str:
    pairs = zip(_parts(colour), _parts(end), strict=True)
    return "#" + "".join(f"{round(one + (other - one) * share):02x}" for one, other in pairs)
