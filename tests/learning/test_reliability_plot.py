"""The drawing and the words say the same."""

from xml.etree import ElementTree

import pytest

from triage.learning.reliability_plot import SIDE, in_words, reliability_svg
from triage.learning.scores import reliability

SPACE = "{http://www.w3.org/2000/svg}"
BEFORE = reliability([(0.95, True), (0.95, False), (0.15, False)])
AFTER = reliability([(0.75, True), (0.75, True), (0.75, False), (0.15, False)])


def drawn():
    return ElementTree.fromstring(reliability_svg(BEFORE, AFTER))


def test_every_bin_is_a_sentence():
    assert in_words(AFTER) == [
        "Stated 10% to 20% (mean 15.0%): right 0 of 1, 0.0% (0.0% to 79.3%).",
        "Stated 70% to 80% (mean 75.0%): right 2 of 3, 66.7% (20.8% to 93.9%).",
    ]


def test_the_description_says_everything_the_drawing_shows():
    root = drawn()
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == "title words"
    words = root.find(f"{SPACE}desc").text
    assert words == " ".join(["Before.", *in_words(BEFORE), "After.", *in_words(AFTER)])


def test_with_nothing_to_compare_it_speaks_of_no_before():
    root = ElementTree.fromstring(reliability_svg((), AFTER))
    assert root.find(f"{SPACE}desc").text == " ".join(in_words(AFTER))
    labels = [label.text for label in root.findall(f"{SPACE}text")]
    assert "hollow: before, solid: after" not in labels
    assert "hollow: before, solid: after" in [label.text for label in drawn().findall(f"{SPACE}text")]


def test_each_bin_has_a_mark_at_its_place_and_a_bar_from_end_to_end():
    root = drawn()
    circles = root.findall(f"{SPACE}circle")
    assert [circle.get("fill") == "none" for circle in circles] == [True, True, False, False]
    zero, one = scale(root)
    mark, held = circles[-1], AFTER[-1]
    assert (zero - float(mark.get("cy"))) / (zero - one) == pytest.approx(held.right / held.of, abs=0.001)
    bar = root.findall(f"{SPACE}line")[-1]
    ends = [(zero - float(bar.get(end))) / (zero - one) for end in ("y1", "y2")]
    assert ends == pytest.approx(held.interval, abs=0.001)


def scale(root):
    """Where 0 and 1 stand, from the line of equal chances."""
    diagonal = next(line for line in root.findall(f"{SPACE}line") if line.get("stroke-dasharray") != "none")
    zero, one = float(diagonal.get("y1")), float(diagonal.get("y2"))
    assert zero - one == SIDE
    return zero, one


def test_nothing_in_it_needs_a_style_or_a_script():
    text = reliability_svg(BEFORE, AFTER)
    assert "style" not in text
    assert "<script" not in text
