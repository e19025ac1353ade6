"""axe-core with its WCAG 2.2 tags finds nothing, nothing overflows, and every line is big enough for a thumb."""

import pytest
from axe_playwright_python.sync_playwright import Axe

pytestmark = pytest.mark.django_db(transaction=True)

TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
CLOCK = "complaint=no-heat&heat-main=no-heat&danger=none&display-state=auto-or-timer&recent-event=power-cut-or-surge"
LAMP = "complaint=lamp&lamp-state=lamp-dead&heat-main=heat-normal&danger=none"
PLACES = {
    "start": "/?",
    "danger": "/danger/?complaint=no-heat",
    "question": "/check/?complaint=no-heat&heat-main=no-heat&danger=none",
    "make safe": "/check/?complaint=smell&smell-type=plastic-or-fishy",
    "gas": "/check/?smell-type=gas",
    "advice": f"/check/?{CLOCK}",
    "task": f"/check/task/set-clock/?{CLOCK}",
    "task, closed": f"/check/task/change-lamp/?{LAMP}",
    "task, open": f"/check/task/change-lamp/?{LAMP}&cold=yes&supply-off=yes&plug-or-breaker-off=yes",
    "another appliance": "/not-this/microwave/?",
    "a broken link": "/check/?complaint=no-heat&nonsense=1&danger=maybe",
}
every_place = pytest.mark.parametrize("place", PLACES)


@pytest.fixture(params=["light", "dark"])
def scheme(request):
    return request.param


@every_place
def test_axe_finds_nothing(browser, live_server, place, scheme):
    context = browser.new_context(viewport={"width": 360, "height": 740}, color_scheme=scheme)
    page = context.new_page()
    page.goto(f"{live_server.url}{PLACES[place]}&region=gb-eng")
    found = Axe().run(page, options={"runOnly": TAGS})
    context.close()
    assert [(v["id"], v["nodes"][0]["html"]) for v in found.response["violations"]] == []


@every_place
def test_nothing_runs_off_the_side_of_a_small_screen(browser, live_server, place):
    context = browser.new_context(viewport={"width": 320, "height": 640})
    page = context.new_page()
    page.goto(f"{live_server.url}{PLACES[place]}&region=us")
    width = page.evaluate("() => document.documentElement.scrollWidth")
    context.close()
    assert width <= 320


@every_place
def test_every_page_has_one_heading_and_the_way_out(page, live_server, place):
    page.goto(f"{live_server.url}{PLACES[place]}&region=us")
    assert page.get_by_role("heading", level=1).count() == 1
    assert page.get_by_role("link", name="Danger? Stop here").is_visible()
    assert page.get_by_role("link", name="Call 911").first.is_visible()


@pytest.mark.parametrize("place", ["start", "danger", "question", "advice", "task, closed"])
def test_lines_to_tap_are_at_least_48_pixels_high(page, live_server, place):
    page.goto(f"{live_server.url}{PLACES[place]}&region=gb-eng")
    heights = page.evaluate(
        "() => [...document.querySelectorAll('a.bar, nav.way-out a, summary')]"
        ".map(e => e.getBoundingClientRect().height).filter(h => h > 0)"
    )
    assert heights
    assert min(heights) >= 48
