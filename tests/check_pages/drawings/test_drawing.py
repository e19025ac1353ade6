"""Places on a drawing."""

from triage.check_pages.drawings.drawing import Drawing, Scale, box, through


def test_a_scale_keeps_what_lies_beyond_at_its_end():
    scale = Scale(0.0, 10.0, 100.0, 200.0)
    assert [scale.at(value) for value in (-5.0, 0.0, 2.5, 10.0, 99.0)] == [100.0, 100.0, 125.0, 200.0, 200.0]


def test_a_box_is_never_less_than_nothing_wide():
    assert dict(box("hot", 10.0, 0.0, 4.0, 5.0).at)["width"] == "0.0"


def test_a_line_through_points_names_them_in_order():
    assert dict(through("warmth", [(1.0, 2.0), (3.0, 4.5)]).at) == {"points": "1.0,2.0 3.0,4.5"}


def test_the_view_box_is_the_whole_drawing():
    assert Drawing(80.0, (), {}).view_box == "0 0 320 80"
