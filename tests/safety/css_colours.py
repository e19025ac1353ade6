"""The colours that a stylesheet of this project sets as custom properties, and the contrast between two of them.

Contrast is that of WCAG 2.2: (lighter + 0.05) / (darker + 0.05) of the relative luminances of sRGB colours.
"""

import colorsys
import re
from pathlib import Path

import triage

CSS = Path(triage.__file__).parent / "static" / "triage" / "css"
SHORT = {"#fff": "#ffffff", "#000": "#000000"}


def properties(text):
    """The custom properties of one rule, by name without the dashes."""
    return {name: SHORT.get(value, value) for name, value in re.findall(r"--([\w-]+):\s*(#\w+)", text)}


def rule(sheet, selector):
    """What stands between the braces of the first rule with exactly this selector."""
    text = (CSS / sheet).read_text("utf-8")
    return re.search(rf"(?:^|[}}\n])\s*{re.escape(selector)}\s*{{([^{{}}]*)}}", text)[1]


def signal(word):
    """Ground and word colour of a signal word's panel; what a word does not set is that of the plain panel."""
    own = {} if word == "NOTICE" else properties(rule("signals.css", f".signal--{word.lower()}"))
    both = {**properties(rule("signals.css", ".signal")), **own}
    return both["ground"], both["word"]


def schemes():
    """The colours by day and by night."""
    text = (CSS / "oven.css").read_text("utf-8")
    day, night = re.findall(r":root\s*{([^{}]*--enamel[^{}]*)}", text)
    return {"day": properties(day), "night": {**properties(day), **properties(night)}}


def rgb(colour):
    return [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]


def hue(colour):
    """The hue in degrees."""
    return 360 * colorsys.rgb_to_hsv(*rgb(colour))[0]


def luminance(colour):
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in rgb(colour)]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one, other):
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)
