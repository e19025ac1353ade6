"""The door from the front with its seal: at each of eight places tight, leaking or not tried, told by shape."""

from collections.abc import Mapping

from triage.check_pages.drawings.drawing import WIDTH, Drawing, Facts, Shape, box, dot, line, named
from triage.engine.readings.gasket import SEAL_PLACES

LEFT, RIGHT = 70.0, WIDTH - 70.0
TOP, BOTTOM = 34.0, 166.0
ACROSS = (LEFT, WIDTH / 2.0, RIGHT)
DOWN = (TOP, (TOP + BOTTOM) / 2.0, BOTTOM)
SPOTS: Mapping[str, tuple[float, float]] = {
    "top-left": (ACROSS[0], DOWN[0]),
    "top": (ACROSS[1], DOWN[0]),
    "top-right": (ACROSS[2], DOWN[0]),
    "right": (ACROSS[2], DOWN[1]),
    "bottom-right": (ACROSS[2], DOWN[2]),
    "bottom": (ACROSS[1], DOWN[2]),
    "bottom-left": (ACROSS[0], DOWN[2]),
    "left": (ACROSS[0], DOWN[1]),
}
OUTWARD = 26.0


def door_diagram(leaks: tuple[bool | None, ...], facts: Facts) -> Drawing:
    shapes = [
        box("door", LEFT - 16.0, TOP - 14.0, RIGHT + 16.0, BOTTOM + 14.0),
        box("seal", LEFT, TOP, RIGHT, BOTTOM),
        line("axis", LEFT + 30.0, TOP - 7.0, RIGHT - 30.0, TOP - 7.0),
    ]
    for place, leak in zip(SEAL_PLACES, leaks, strict=True):
        shapes += _spot(place, leak)
    for at, kind in enumerate(("tight", "leak", "untried")):
        across = 8.0 + at * 108.0
        shapes += [dot(kind, across + 6.0, 206.0, 6.0), named(kind, across + 17.0, 210.0)]
    return Drawing(218.0, tuple(shapes), facts)


def _spot(place: str, leak: bool | None) -> list[Shape]:
    across, down = SPOTS[place]
    if leak is None:
        return [dot("untried", across, down, 5.0)]
    if not leak:
        return [dot("tight", across, down, 5.0)]
    away = _away(place)
    rays = [
        line(
            "ray",
            across + 10.0 * away[0] - 7.0 * n * away[1],
            down + 10.0 * away[1] + 7.0 * n * away[0],
            across + OUTWARD * away[0] - 10.0 * n * away[1],
            down + OUTWARD * away[1] + 10.0 * n * away[0],
        )
        for n in (-1, 0, 1)
    ]
    return [*rays, dot("leak", across, down, 7.0)]


def _away(place: str) -> tuple[float, float]:
    """The direction out of the door at a place."""
    across = -1.0 if "left" in place else 1.0 if "right" in place else 0.0
    down = -1.0 if "top" in place else 1.0 if "bottom" in place else 0.0
    length = (across * across + down * down) ** 0.5
    return across / length, down / length
