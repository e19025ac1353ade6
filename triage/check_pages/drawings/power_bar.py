"""Power on a bar beside what the rating plate lets one expect, each with what it may be out by."""

from triage.check_pages.drawings.drawing import WIDTH, Drawing, Facts, Scale, Shape, box, label, line, named
from triage.engine.readings import Measured

LEFT, RIGHT = 4.0, WIDTH - 4.0
EXPECTED, DRAWN = (24.0, 46.0), (72.0, 94.0)
AXIS = 112.0
STEPS = (50.0, 100.0, 250.0, 500.0, 1000.0, 2000.0, 5000.0, 10_000.0)
MOST_STEPS = 5


def power_bar(watts: Measured, expected: Measured, expectation: str, facts: Facts) -> Drawing:
    """`expectation` names the upper bar; the lower one is what is drawn now."""
    top = max(expected.value + 2.0 * expected.uncertainty, watts.value + 2.0 * watts.uncertainty, STEPS[0])
    scale = Scale(0.0, top * 1.04, LEFT, RIGHT)
    step = next((step for step in STEPS if top / step <= MOST_STEPS), STEPS[-1])
    marks = [step * n for n in range(1, int(top / step) + 1)]
    shapes = [
        named(expectation, LEFT, EXPECTED[0] - 6.0),
        *_bar("plate", expected, scale, EXPECTED),
        named("drawn", LEFT, DRAWN[0] - 6.0),
        *_bar("hot", watts, scale, DRAWN),
        line("axis", LEFT, AXIS, RIGHT, AXIS),
        *[line("axis", scale.at(mark), AXIS, scale.at(mark), AXIS + 5.0) for mark in marks],
        *[label(f"{mark / 1000:g} kW", scale.at(mark), AXIS + 20.0, "middle") for mark in marks if mark < 0.95 * top],
    ]
    return Drawing(AXIS + 26.0, tuple(shapes), facts)


def _bar(kind: str, measured: Measured, scale: Scale, span: tuple[float, float]) -> list[Shape]:
    """The bar to the value, and a whisker over where the true value lies 19 times in 20."""
    low, high = measured.value - 2.0 * measured.uncertainty, measured.value + 2.0 * measured.uncertainty
    middle = (span[0] + span[1]) / 2.0
    return [
        box(kind, scale.at(0.0), span[0], scale.at(measured.value), span[1]),
        line("whisker", scale.at(low), middle, scale.at(high), middle),
        line("whisker", scale.at(low), span[0] + 4.0, scale.at(low), span[1] - 4.0),
        line("whisker", scale.at(high), span[0] + 4.0, scale.at(high), span[1] - 4.0),
    ]
