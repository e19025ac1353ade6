"""Ranges of money under each other: each bar from the least to the most, with a mark in its middle, on one axis."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor, log10

from triage.check_pages.drawings.drawing import WIDTH, Anchor, Drawing, Facts, Scale, Shape, box, label, line

LEFT, RIGHT = 4.0, WIDTH - 4.0
TOP = 14.0
ROW, BAR = 46.0, 20.0
UNDER_WORDS = 7.0
THINNEST = 2.0
MOST_STEPS = 4


@dataclass(frozen=True, slots=True)
class MoneyRange:
    """What costs that much, in words that name the range as well."""

    text: str
    low: float
    high: float


def money_bars(ranges: Sequence[MoneyRange], unit: str, facts: Facts) -> Drawing:
    """`unit` names what the numbers on the axis are, such as "£ a year"."""
    top = max(*(one.high for one in ranges), 1.0)
    scale, step = Scale(0.0, top * 1.04, LEFT, RIGHT), _step(top)
    axis = TOP + ROW * len(ranges)
    shapes = [shape for at, one in enumerate(ranges) for shape in _row(one, scale, TOP + ROW * at)]
    shapes.append(line("axis", LEFT, axis, RIGHT, axis))
    for mark in (step * n for n in range(int(top / step) + 1)):
        shapes.append(line("axis", scale.at(mark), axis, scale.at(mark), axis + 5.0))
        shapes.append(label(f"{mark:.12g}", scale.at(mark), axis + 20.0, _anchor(mark, top)))
    shapes.append(label(unit, RIGHT, axis + 38.0, "end"))
    return Drawing(axis + 44.0, tuple(shapes), facts)


def _row(one: MoneyRange, scale: Scale, top: float) -> list[Shape]:
    upper, lower = top + UNDER_WORDS, top + UNDER_WORDS + BAR
    left, right = scale.at(one.low), scale.at(one.high)
    middle = (left + right) / 2.0
    return [
        label(one.text, LEFT, top),
        box("cost", left, upper, max(right, left + THINNEST), lower),
        line("middle", middle, upper - 3.0, middle, lower + 3.0),
    ]


def _step(top: float) -> float:
    """One, two or five of a power of ten, such that few marks are enough."""
    power = 10.0 ** floor(log10(top / MOST_STEPS))
    return next(power * n for n in (1.0, 2.0, 5.0, 10.0) if top / (power * n) <= MOST_STEPS)


def _anchor(mark: float, top: float) -> Anchor:
    """The first and last number stay inside the drawing."""
    return "start" if mark == 0.0 else "end" if mark > 0.95 * top else "middle"
