"""Minutes on a line: the stretches that mean something, and from when to when the thing measured may have been."""

from dataclasses import dataclass

from triage.check_pages.drawings.drawing import WIDTH, Anchor, Drawing, Facts, Scale, Shape, box, label, line, named

LEFT, RIGHT = 6.0, WIDTH - 6.0
TOP, BOTTOM = 34.0, 66.0
MARK_TOP = 20.0
EVERY = (5.0, 10.0, 15.0, 30.0, 60.0, 120.0)
MOST_MARKS = 6


@dataclass(frozen=True, slots=True)
class Stretch:
    """From when to when, its style, and its name."""

    start: float
    end: float
    kind: str
    name: str


def minutes_line(
    length: float, stretches: list[Stretch], seen: tuple[float, float, bool], unit: str, facts: Facts
) -> Drawing:
    """`seen` is the earliest and latest it may have been, and whether it may be later still; `unit` names the line."""
    scale = Scale(0.0, length, LEFT, RIGHT)
    first, last, later = seen
    every = next((step for step in EVERY if length / step <= MOST_MARKS), EVERY[-1])
    marks = [every * n for n in range(int(length / every) + 1)]
    shapes: list[Shape] = []
    for stretch in stretches:
        shapes.append(box(stretch.kind, scale.at(stretch.start), TOP, scale.at(stretch.end), BOTTOM))
        shapes.append(named(stretch.name, scale.at(stretch.start) + 3.0, TOP + 20.0))
    left, right = scale.at(first), scale.at(length if later else last)
    shapes += [
        box("seen", left - 1.5, MARK_TOP, max(right, left) + 1.5, TOP),
        line("seen-edge", left, MARK_TOP - 6.0, left, BOTTOM + 6.0),
        line("axis", LEFT, BOTTOM, RIGHT, BOTTOM),
        *[line("axis", scale.at(mark), BOTTOM, scale.at(mark), BOTTOM + 5.0) for mark in marks],
        *[label(f"{mark:g}", scale.at(mark), BOTTOM + 20.0, _anchor(mark, length)) for mark in marks],
        named(unit, RIGHT, BOTTOM + 36.0, "end"),
    ]
    return Drawing(BOTTOM + 42.0, tuple(shapes), facts)


def _anchor(mark: float, length: float) -> Anchor:
    """The first and last number stay inside the drawing."""
    return "start" if mark == 0.0 else "end" if mark > 0.95 * length else "middle"
