"""Temperature against time: the readings, the set point with the band that is no fault, the mean and whole cycles."""

from collections.abc import Callable
from itertools import pairwise

from triage.check_pages.drawings.drawing import (
    WIDTH,
    Drawing,
    Facts,
    Scale,
    Shape,
    box,
    dot,
    label,
    line,
    named,
    through,
)
from triage.engine.readings.thermometer import Temperatures, whole_cycles

LEFT, RIGHT = 44.0, WIDTH - 6.0
KEY = 12.0
TOP, BOTTOM = 22.0, 178.0
CYCLES = 188.0
TIMES = 222.0
NO_FAULT = 15.0
ROOM_ABOVE = 10.0


def temperature_line(found: Temperatures, degrees: Callable[[float], str], facts: Facts) -> Drawing:
    """`degrees` writes a temperature as people there read it."""
    values = [value for _, value in found.points]
    low = min(*values, found.set_point - NO_FAULT) - ROOM_ABOVE
    high = max(*values, found.set_point + NO_FAULT) + ROOM_ABOVE
    start, end = found.points[0][0], found.points[-1][0]
    across = Scale(start, end if end > start else start + 1.0, LEFT + 6.0, RIGHT - 6.0)
    down = Scale(low, high, BOTTOM, TOP)
    shapes = [
        box("band", LEFT, down.at(found.set_point + NO_FAULT), RIGHT, down.at(found.set_point - NO_FAULT)),
        line("set", LEFT, down.at(found.set_point), RIGHT, down.at(found.set_point)),
        *_mean(found, down),
        through("warmth", [(across.at(time), down.at(value)) for time, value in found.points]),
        *[dot("reading", across.at(time), down.at(value), 3.2) for time, value in found.points],
        *_sides(found, (start, end), (across, down), degrees),
        *_cycles(found, across),
    ]
    return Drawing(228.0, tuple(shapes), facts)


def _mean(found: Temperatures, down: Scale) -> list[Shape]:
    """The mean across the drawing, and what its line looks like, named above where no reading lies."""
    place = down.at(found.mean.value)
    return [
        line("mean", LEFT, place, RIGHT, place),
        line("mean", RIGHT - 76.0, KEY - 4.0, RIGHT - 40.0, KEY - 4.0),
        named("mean", RIGHT, KEY, "end"),
    ]


def _sides(
    found: Temperatures, times: tuple[float, float], scales: tuple[Scale, Scale], degrees: Callable[[float], str]
) -> list[Shape]:
    across, down = scales
    return [
        line("axis", LEFT, TOP, LEFT, BOTTOM),
        line("axis", LEFT, BOTTOM, RIGHT, BOTTOM),
        label(degrees(found.set_point), LEFT - 4.0, down.at(found.set_point) + 4.0, "end", "label strong"),
        named("no-fault", LEFT, KEY),
        label(f"{times[0]:g}", across.at(times[0]), TIMES, "middle"),
        named("minutes", RIGHT, TIMES, "end", n=f"{times[1]:g}"),
    ]


def _cycles(found: Temperatures, across: Scale) -> list[Shape]:
    """A bracket under each whole cycle."""
    cycles = whole_cycles(found.points)
    shapes = []
    for start, end in cycles:
        left, right = across.at(start) + 1.0, across.at(end) - 1.0
        corners = [(left, CYCLES - 5.0), (left, CYCLES), (right, CYCLES), (right, CYCLES - 5.0)]
        shapes += [line("cycle", *one, *other) for one, other in pairwise(corners)]
    if cycles:
        shapes.append(named("cycle", across.at(cycles[0][0]), CYCLES + 15.0))
    return shapes
