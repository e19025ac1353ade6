"""No page asks anybody but this site: every request of a tour through all of it is listed and looked at. The tour goes
to every address there is, so a new page is on it."""

from urllib.parse import urlsplit

import pytest
from django.contrib.auth.models import User

from tests.attack.whole_site import World, desk_addresses, is_page
from tests.desk.permissions import ALIKE_FOR_ALL
from tests.household.every_page import PAGES
from tests.household.hand_overs import form_address
from triage.household.sheet_address import sheet_address
from triage.models.firm import Role

pytestmark = pytest.mark.django_db(transaction=True)

UNFOLD = "document.querySelectorAll('details').forEach(details => { details.open = true })"
DESK = (
    "",
    "call/",
    "calibration/",
    "exports/",
    "deliveries/",
    "settings/",
    "staff/",
    "account/",
    "account/second-factor/",
)


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


def pages_for(client, addresses):
    """The addresses at which this browser is shown a page; a file asks nobody."""
    answers = ((address, client.get(address)) for address in addresses)
    return [address for address, answer in answers if is_page(answer) and answer.status_code == 200]


def test_no_page_of_a_check_asks_anybody_else(page, asked):
    world = World()
    open_to_all = pages_for(world.clients["nobody"], map(world.address, sorted(ALIKE_FOR_ALL)))
    assert len(open_to_all) > 5
    for path in (*PAGES.values(), *open_to_all, world.address("embed-frame"), "/no-such-page/", "/api/v1/openapi.json"):
        visit(page, path)
    page.complaints[:] = [one for one in page.complaints if "404" not in one]
    assert len(asked) > len(PAGES)
    assert others(page, asked) == []


def test_no_page_with_a_name_on_it_asks_anybody_else(page, asked):
    world = World()
    sheet = world.sheet
    for path in (form_address(world.firm), sheet_address(sheet, sent="yes"), world.address("desk-invitation")):
        visit(page, path)
    visit(page, sheet_address(sheet).replace("?", "erase/?"))
    visit(page, world.address("desk-sign-in"))
    assert others(page, asked) == []


def test_no_page_of_the_desk_asks_anybody_else(page, asked):
    world = World()
    User.objects.filter(memberships__firm=world.firm, memberships__role=Role.OWNER).update(is_staff=True)
    owner = world.clients["owner"]
    page.context.add_cookies(
        [{"name": name, "value": cookie.value, "url": f"{page.site}/desk/"} for name, cookie in owner.cookies.items()]
    )
    inside = pages_for(owner, (address for _name, address in desk_addresses(world)))
    assert len(inside) > 15
    for path in inside:
        visit(page, path)
        assert urlsplit(page.url).path == urlsplit(path).path
    assert others(page, asked) == []


def test_a_request_to_somebody_else_would_be_seen(page, asked):
    """The same server under another name is somebody else."""
    elsewhere = page.site.replace("localhost", "127.0.0.1")
    assert elsewhere != page.site
    page.goto(f"{elsewhere}/health/")
    assert f"{elsewhere}/health/" in others(page, asked)
