"""Ranges of money as bars on one axis."""

import pytest
from hypothesis import given, strategies

from tests.check_pages.drawings.looking import at, inside, only
from tests.engine.trails import some
from triage.check_pages.drawings.money_bars import THINNEST, MoneyRange, money_bars

MONEY = strategies.floats(0, 1e6, allow_subnormal=False)


def drawn(*ranges):
    return money_bars([MoneyRange(f"{low} to {high}", low, high) for low, high in ranges], "£", {"told": 1})


def marks_of(drawing):
    """The numbers under the axis, and where they stand."""
    marks = [shape for shape in only(drawing, "label") if shape.text.replace(".", "").isdigit()]
    ticks = [at(shape, "x1") for shape in only(drawing, "axis") if at(shape, "x1") == at(shape, "x2")]
    return dict(zip([float(mark.text) for mark in marks], ticks, strict=True))


@pytest.mark.parametrize("ranges", [[(70, 190)], [(70, 190), (50, 80)], [(15, 45), (30, 45), (1, 9)]])
def test_a_bar_goes_from_the_least_to_the_most_by_the_numbers_of_its_axis(ranges):
    drawing = drawn(*ranges)
    marks = marks_of(drawing)
    zero, last = min(marks), max(marks)
    unit = (marks[last] - marks[zero]) / last
    for bar, (low, high) in zip(only(drawing, "cost"), ranges, strict=True):
        assert (at(bar, "x") - marks[zero]) / unit == pytest.approx(low, abs=0.2 / unit)
        assert at(bar, "width") / unit == pytest.approx(high - low, abs=0.2 / unit)


@some
@given(ranges=strategies.lists(strategies.tuples(MONEY, MONEY).map(sorted), min_size=1, max_size=4))
def test_whatever_it_costs_all_stays_inside_with_few_marks_and_the_middle_in_the_bar(ranges):
    drawing = drawn(*ranges)
    assert inside(drawing)
    assert 2 <= len(marks_of(drawing)) <= 5
    for bar, middle in zip(only(drawing, "cost"), only(drawing, "middle"), strict=True):
        assert at(bar, "width") >= THINNEST - 0.1
        assert at(middle, "x1") == at(middle, "x2") == pytest.approx(at(bar, "x") + at(bar, "width") / 2.0, abs=1.1)


def test_each_bar_is_named_in_words_above_it_and_the_axis_has_its_unit():
    drawing = drawn((10, 20), (30, 40))
    labels = {shape.text: at(shape, "y") for shape in only(drawing, "label")}
    for bar, words in zip(only(drawing, "cost"), ("10 to 20", "30 to 40"), strict=True):
        assert labels[words] < at(bar, "y")
    assert "£" in labels
    assert drawing.facts == {"told": 1}
