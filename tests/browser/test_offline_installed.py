"""The browser itself finds that the check can be installed, and what it reads in the manifest holds."""

import json

import pytest
from playwright.sync_api import expect

from tests.browser.phone import CONTROLLED
from tests.conftest import STAY_LOCAL

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def kept_phone(playwright, chromium_path, live_server, tmp_path):
    """A profile on the disk: in any other the browser installs nothing, and says so."""
    context = playwright.chromium.launch_persistent_context(
        tmp_path / "phone", executable_path=chromium_path, args=list(STAY_LOCAL)
    )
    page = context.new_page()
    page.goto(f"{live_server.url}/?region=gb-eng")
    page.wait_for_function(CONTROLLED)
    yield page, context.new_cdp_session(page)
    context.close()


def test_the_browser_finds_nothing_that_forbids_installing(kept_phone):
    _page, session = kept_phone
    assert session.send("Page.getInstallabilityErrors")["installabilityErrors"] == []


def test_the_browser_reads_the_manifest_without_a_complaint(kept_phone):
    _page, session = kept_phone
    read = session.send("Page.getAppManifest")
    assert read["errors"] == []
    told = json.loads(read["data"])
    assert told["share_target"]["method"] == "GET"
    assert {icon["purpose"] for icon in told["icons"]} == {"any", "maskable"}


def test_the_way_onto_the_phone_is_offered_at_the_foot_alone(page):
    page.goto(f"{page.site}/?region=gb-eng")
    offer = page.locator("#install")
    expect(offer).to_be_hidden()
    page.evaluate(
        """() => {
          const event = new Event("beforeinstallprompt", { cancelable: true });
          event.prompt = () => { window.prompted = true; };
          window.dispatchEvent(event);
          window.held = event.defaultPrevented;
        }"""
    )
    expect(offer).to_be_visible()
    assert page.evaluate("() => window.held")
    assert page.evaluate("() => document.querySelector('footer').contains(document.getElementById('install'))")
    page.get_by_role("button", name="Keep this check on the phone").click()
    assert page.evaluate("() => window.prompted")
    expect(offer).to_be_hidden()
