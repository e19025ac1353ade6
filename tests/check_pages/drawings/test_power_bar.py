"""Power on a bar beside what the plate lets one expect."""

import pytest

from tests.check_pages.drawings.looking import at, inside, only
from triage.check_pages.drawings.power_bar import power_bar
from triage.engine.readings import Measured


@pytest.mark.parametrize("watts", [-50.0, 0.0, 40.0, 650.0, 1890.0, 9000.0])
def test_the_bar_of_power_is_as_long_as_its_share_of_what_was_expected(watts):
    drawing = power_bar(Measured(watts, 60.0), Measured(2000.0, 100.0), "by-plate", {"told": 1})
    (expected,), (drawn,) = only(drawing, "plate"), only(drawing, "hot")
    assert at(drawn, "width") == pytest.approx(max(watts, 0.0) / 2000.0 * at(expected, "width"), abs=0.2)
    assert inside(drawing)
    assert drawing.facts == {"told": 1}
