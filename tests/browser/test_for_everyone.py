"""On a page of any region nothing overflows, and there are one heading and the way out; `examining.py` has the rest."""

import pytest

pytestmark = pytest.mark.django_db(transaction=True)

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


@pytest.mark.parametrize("place", PLACES)
def test_every_page_fits_a_small_screen_and_has_one_heading_and_the_way_out(page, live_server, place):
    page.set_viewport_size({"width": 320, "height": 640})
    page.goto(f"{live_server.url}{PLACES[place]}&region=us")
    assert page.evaluate("() => document.documentElement.scrollWidth") <= 320
    assert page.get_by_role("heading", level=1).count() == 1
    assert page.get_by_role("link", name="Danger? Stop here").is_visible()
    assert page.get_by_role("link", name="Call 911").first.is_visible()
