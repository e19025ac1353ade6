"""Every page of a check with everything unfolded: no barrier in any way of looking at it, and nothing out of reach."""

import pytest

from tests.browser.examining import examine, take_pictures
from tests.household.every_page import PAGES

SHOWN = ("start", "danger", "question", "reading", "task open", "advice", "make safe", "costs", "label")


@pytest.mark.parametrize("name", PAGES)
def test_no_page_has_a_barrier_or_anything_out_of_reach(page, name):
    page.goto(f"{page.site}{PAGES[name]}")
    if name in SHOWN:
        take_pictures(page, name)
    if name == "advice":
        take_pictures(page, "summary", of=".tell")
    examine(page)
