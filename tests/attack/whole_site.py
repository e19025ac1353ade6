"""Every address of the site as an attacker lists them: opened by who may, so that there is a page to look at."""

from unittest.mock import patch
from urllib.parse import urlencode

from django.test import Client, RequestFactory

from tests.desk.call.conftest import asked_by
from tests.desk.call.reading_aloud import told_and_read
from tests.desk.permissions import GET_ACCESS, token_of
from tests.desk.test_access import ROUTES, World
from tests.household.every_page import PAGES
from tests.household.hand_overs import form_address
from triage.desk.call.open_call import open_call

__all__ = ["ROUTES", "World", "desk_addresses", "every_answer", "is_page"]


def every_answer(world, **headers):
    """Each kind of page and each address once, by a name: the owner's view of the desk, anybody's of the rest."""
    owner = world.clients["owner"]
    found = {f"page: {name}": owner.get(address, headers=headers) for name, address in PAGES.items()}
    found["page: form"] = owner.get(form_address(world.firm), headers=headers)
    found["page: none"] = owner.get("/no-such-page/", headers=headers)
    found["static"] = owner.get("/static/triage/css/oven.css", headers=headers)
    found["static"].getvalue()  # read to its end, its file is closed
    for name in ROUTES:
        address = world.address(name)
        if name.startswith("household-sheet"):
            address += f"?token={token_of(world.sheet)}"
        found[name] = owner.get(address, headers=headers)
    return found | refusals(world, headers)


def refusals(world, headers):
    """What is answered when no view could: another site's name, a form without its token, and failures."""
    broken = Client(raise_request_exception=False)
    broken.cookies = world.clients["owner"].cookies
    strict = Client(enforce_csrf_checks=True)
    with patch("triage.household.views.start.start_page", side_effect=RuntimeError):
        failed = broken.get(f"/?firm={world.firm.slug}", headers=headers)
    with patch("triage.desk.views.job_sheet.inbox_page", side_effect=RuntimeError):
        failed_inside = broken.get(world.address("desk-inbox"), headers=headers)
    found = {
        "400: host": broken.get("/", headers={**headers, "Host": "evil.example"}),
        "desk-sign-in, form token": strict.post(world.address("desk-sign-in"), {"account": "x"}, headers=headers),
        "500: a check": failed,
        "500: the desk": failed_inside,
    }
    assert [answer.status_code for answer in found.values()] == [400, 403, 500, 500]
    return found


def desk_addresses(world, more=""):
    """Whatever can be opened at the desk, each by its name. A page of a call is one that was read out to its end, so
    that it may be handed over; `more` stands in its query too."""
    heard = heard_out(world.firm) + more
    for name in GET_ACCESS:
        if name.startswith("desk-"):
            yield name, f"{world.address(name)}?{heard}" if "call/" in ROUTES[name] else world.address(name)


def heard_out(firm):
    """The query of a call in this firm's region in which every line was read out."""

    def reopen(href):
        return open_call(asked_by(RequestFactory().get(href), firm))

    def call(query, **more):
        added = urlencode({name.replace("_", "-"): value for name, value in more.items()})
        return reopen(f"/desk/call/?region={firm.region}&{query}&{added}")

    return told_and_read(call, reopen)


def is_page(answer):
    return answer.headers.get("Content-Type", "").startswith("text/html")
