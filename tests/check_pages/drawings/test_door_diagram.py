"""The door with its eight places."""

from tests.check_pages.drawings.looking import at, inside, only
from triage.check_pages.drawings.door_diagram import door_diagram


def test_a_leak_is_told_by_rays_and_a_place_not_tried_by_its_own_mark():
    leaks = (True, False, False, None, None, None, False, False)
    drawing = door_diagram(leaks, {})
    assert len({shape.at for shape in only(drawing, "ray")}) == 3
    assert [len(only(drawing, kind)) for kind in ("leak", "tight", "untried")] == [2, 5, 4]  # one each in the legend
    assert inside(drawing)


def test_rays_spread_at_a_corner_as_at_a_side():
    corner = only(door_diagram((True, *[False] * 7), {}), "ray")
    ends = [(at(ray, "x2"), at(ray, "y2")) for ray in corner]
    assert len({round(x - y) for x, y in ends}) == 3
