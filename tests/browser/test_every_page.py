"""The pages that are rarer, with everything unfolded: no barrier by day or by night, and nothing out of reach."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.household.every_page import PAGES

SCREENS = {"phone": (360, 740), "narrow phone": (320, 640), "desk": (1280, 800)}
SMALLEST_TARGET = 24
UNFOLD = "document.querySelectorAll('details').forEach(details => { details.open = true })"
UNFOLDED = (
    "make safe",
    "advice",
    "advice with a caution",
    "costs",
    "put right",
    "task closed",
    "task open",
    "task not offered",
    "gas smell",
    "not electric",
    "broken address",
)


@pytest.mark.parametrize("name", UNFOLDED)
def test_no_page_has_a_barrier_or_anything_out_of_reach(page, name, tmp_path):
    page.goto(f"{page.site}{PAGES[name]}")
    page.evaluate(UNFOLD)
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)
        found = Axe().run(page)
        assert found.violations_count == 0, found.generate_report()
    for screen, (width, height) in SCREENS.items():
        page.set_viewport_size({"width": width, "height": height})
        page.screenshot(path=tmp_path / f"{screen}.png")
        root = "document.documentElement"
        assert page.evaluate(f"{root}.scrollWidth <= {root}.clientWidth"), screen
        targets = "[...document.querySelectorAll('.bars a, .way-out a, button, summary')]"
        heights = page.evaluate(f"{targets}.map(e => e.getBoundingClientRect().height).filter(h => h > 0)")
        assert min(heights) >= SMALLEST_TARGET
        box = page.get_by_role("link", name="Danger? Stop here").bounding_box()
        assert box["y"] + box["height"] <= height
