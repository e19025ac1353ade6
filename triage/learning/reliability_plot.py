"""How well stated chances held, as a drawing (SVG) and in words that say the same.

Across: the chance stated for the leading fault. Up: how often it was the one. On the diagonal a chance means what it
says. Each mark is a bin with its Wilson bar; before is hollow, after is solid, a little to the right.
"""

from collections.abc import Iterable, Sequence
from xml.etree import ElementTree

from triage.learning.scores import Bin

SIDE = 240
EDGE = 44
WIDTH, HEIGHT = SIDE + EDGE + 16, SIDE + EDGE + 32
NUDGE = 5
SVG = "http://www.w3.org/2000/svg"
INK, FAINT, BEFORE, AFTER = "#222222", "#888888", "#7a3e9d", "#0b5cad"


def in_words(bins: Iterable[Bin]) -> list[str]:
    """One sentence per bin."""
    return [
        f"Stated {held.low:.0%} to {held.high:.0%} (mean {held.stated:.1%}): right {held.right} of {held.of}, "
        f"{held.right / held.of:.1%} ({held.interval[0]:.1%} to {held.interval[1]:.1%})."
        for held in bins
    ]


def reliability_svg(before: Sequence[Bin], after: Sequence[Bin]) -> str:
    """The drawing, with all it shows in its description. Nothing `before`: there is nothing to compare."""
    root = ElementTree.Element(
        "svg", {"xmlns": SVG, "viewBox": f"0 0 {WIDTH} {HEIGHT}", "role": "img", "aria-labelledby": "title words"}
    )
    ElementTree.SubElement(root, "title", id="title").text = "How often the leading fault was right, by stated chance"
    sentences = ["Before.", *in_words(before), "After.", *in_words(after)] if before else in_words(after)
    ElementTree.SubElement(root, "desc", id="words").text = " ".join(sentences)
    _frame(root)
    if before:
        _label(root, _across(1), 12, "hollow: before, solid: after", "end")
    for held in before:
        _mark(root, held, 0, BEFORE, "none")
    for held in after:
        _mark(root, held, NUDGE, AFTER, AFTER)
    ElementTree.indent(root)
    return ElementTree.tostring(root, encoding="unicode") + "\n"


def _frame(root: ElementTree.Element) -> None:
    _line(root, _across(0), _up(0), _across(1), _up(0), INK)
    _line(root, _across(0), _up(0), _across(0), _up(1), INK)
    _line(root, _across(0), _up(0), _across(1), _up(1), FAINT, dashes="4 4")
    for tenths in range(0, 11, 2):
        share = tenths / 10
        _label(root, _across(share), _up(0) + 14, f"{tenths * 10}", "middle")
        _label(root, _across(0) - 6, _up(share) + 4, f"{tenths * 10}", "end")
    _label(root, _across(0.5), _up(0) + 30, "stated chance, in 100", "middle")
    _label(root, _across(0) - 36, 12, "right, in 100", "start")


def _mark(root: ElementTree.Element, held: Bin, nudge: float, colour: str, fill: str) -> None:
    across = _across(held.stated) + nudge
    _line(root, across, _up(held.interval[0]), across, _up(held.interval[1]), colour)
    place = {"cx": f"{across:.1f}", "cy": f"{_up(held.right / held.of):.1f}", "r": "4"}
    ElementTree.SubElement(root, "circle", place, fill=fill, stroke=colour)


def _line(
    root: ElementTree.Element, x1: float, y1: float, x2: float, y2: float, colour: str, dashes: str = "none"
) -> None:
    ends = {"x1": f"{x1:.1f}", "y1": f"{y1:.1f}", "x2": f"{x2:.1f}", "y2": f"{y2:.1f}"}
    ElementTree.SubElement(root, "line", {**ends, "stroke": colour, "stroke-width": "1.5", "stroke-dasharray": dashes})


def _label(root: ElementTree.Element, x: float, y: float, text: str, anchor: str) -> None:
    place = {"x": f"{x:.1f}", "y": f"{y:.1f}", "text-anchor": anchor, "font-size": "10", "font-family": "sans-serif"}
    ElementTree.SubElement(root, "text", place, fill=INK).text = text


def _across(share: float) -> float:
    return EDGE + SIDE * share


def _up(share: float) -> float:
    return 20 + SIDE * (1.0 - share)
