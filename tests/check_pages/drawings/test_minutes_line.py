"""Minutes on a line."""

import pytest

from tests.check_pages.drawings.looking import at, inside, only
from triage.check_pages.drawings.drawing import WIDTH
from triage.check_pages.drawings.minutes_line import Stretch, minutes_line


def test_a_fan_that_still_runs_reaches_the_end_of_the_line():
    stretches = [Stretch(0.0, 30.0, "plate", "usual")]
    running = only(minutes_line(90.0, stretches, (40.0, 40.5, True), "minutes-from-cold", {}), "seen")[0]
    stopped = only(minutes_line(90.0, stretches, (20.0, 25.0, False), "minutes-from-cold", {}), "seen")[0]
    assert at(running, "x") + at(running, "width") > WIDTH - 8.0
    assert at(stopped, "width") < 30.0


@pytest.mark.parametrize("length", [30.0, 90.0, 240.0])
def test_minutes_are_marked_few_times(length):
    drawing = minutes_line(length, [], (1.0, 2.0, False), "minutes-from-cold", {})
    assert 3 <= len([shape for shape in only(drawing, "label") if shape.text.isdigit()]) <= 8
    assert inside(drawing)
