"""No page asks anybody but this site: every request of a tour through all of it is listed and looked at."""

from urllib.parse import urlsplit

import pytest

from tests.desk.desk_cast import client_of
from tests.firm_builders import make_firm, make_job_sheet, make_member
from tests.household.every_page import PAGES
from tests.household.hand_overs import form_address
from triage.household.sheet_address import sheet_address
from triage.models.firm import Role

pytestmark = pytest.mark.django_db(transaction=True)

UNFOLD = "document.querySelectorAll('details').forEach(details => { details.open = true })"
DESK = ("", "calibration/", "exports/", "deliveries/", "settings/", "staff/", "account/", "account/second-factor/")


@pytest.fixture
def asked(page):
    """Where every request of the browser went, those of a worker and of a frame too."""
    found = []
    page.context.on("request", lambda request: found.append(request.url))
    page.context.on("serviceworker", lambda worker: found.append(worker.url))
    return found


def others(page, asked):
    own = urlsplit(page.site).netloc
    return [url for url in asked if urlsplit(url).scheme not in ("data", "blob") and urlsplit(url).netloc != own]


def visit(page, path):
    page.goto(f"{page.site}{path}", wait_until="load")
    page.evaluate(UNFOLD)
    page.wait_for_load_state("networkidle")


def test_no_page_of_a_check_asks_anybody_else(page, asked):
    for path in PAGES.values():
        visit(page, path)
    for path in ("/call/?region=gb-eng", "/no-such-page/", "/api/v1/openapi.json"):
        page.goto(f"{page.site}{path}")
    page.complaints[:] = [one for one in page.complaints if "404" not in one]
    assert len(asked) > len(PAGES)
    assert others(page, asked) == []


def test_no_page_with_a_name_on_it_asks_anybody_else(page, asked):
    firm = make_firm(slug="hearth")
    sheet = make_job_sheet(firm)
    visit(page, form_address(firm))
    visit(page, sheet_address(sheet, sent="yes"))
    visit(page, sheet_address(sheet).replace("?", "erase/?"))
    client = client_of(make_member(firm, Role.OWNER))
    page.context.add_cookies(
        [{"name": name, "value": cookie.value, "url": f"{page.site}/desk/"} for name, cookie in client.cookies.items()]
    )
    visit(page, "/desk/sign-in/")
    for path in (*DESK, f"sheets/{sheet.reference}/", f"sheets/{sheet.reference}/outcome/"):
        visit(page, f"/desk/{path}")
        assert "/desk/sign-in/" not in page.url
    assert others(page, asked) == []


def test_a_request_to_somebody_else_would_be_seen(page, asked):
    """The same server under another name is somebody else."""
    elsewhere = page.site.replace("localhost", "127.0.0.1")
    assert elsewhere != page.site
    page.goto(f"{elsewhere}/health/")
    assert f"{elsewhere}/health/" in others(page, asked)
