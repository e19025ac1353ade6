"""A real browser on the real site, which must not complain about anything."""

import pytest
from playwright.sync_api import expect

# A machine that does other things beside may take this long over one step; what never comes fails all the same.
PATIENCE = 30_000
PHONE = {"width": 360, "height": 740}


@pytest.fixture(scope="session", autouse=True)
def patient():
    """Playwright's own waits last so long, `expect` alone gives up sooner."""
    expect.set_options(timeout=PATIENCE)


@pytest.fixture
def browser_context_args(browser_context_args):
    return {**browser_context_args, "viewport": PHONE, "locale": "en-GB"}


@pytest.fixture
def page(page, live_server):
    """A page on the site; anything the browser reports as an error fails the test at its end, unless the test
    expected it and emptied `page.complaints`."""
    complaints = page.complaints = []
    page.on("console", lambda message: complaints.append(message.text) if message.type == "error" else None)
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.site = live_server.url
    yield page
    assert complaints == []
