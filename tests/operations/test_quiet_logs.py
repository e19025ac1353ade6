"""Whatever is asked, sent and broken, no answer, contact, link or password is in any log of the production server.

The marks below stand for them: they are put wherever somebody can put anything, and looked for in all that was written.
"""

import ast
import json
import logging
from urllib.parse import urlencode
from urllib.request import HTTPRedirectHandler, Request, build_opener

import pytest
from django.urls import path

from tests.household.checks_done import answers_of
from tests.household.every_page import PAGES
from tests.operations.production import ACCESS_LINE, production
from tests.whole_site.project_files import ROOT
from triage.operations.log_lines import JSONFormatter, TextFormatter

ANSWER, CONTACT = "mark-of-an-answer", "mark-of-a-contact"
MARKS = (ANSWER, CONTACT, "no-heat", "fan-element", "S3CRET")
PREPARE = """
import django; django.setup()
from triage.models import Firm, JobSheet
from triage.check_pages.form_state import new_state
from triage.desk.staff import invite
firm = Firm.objects.create(slug="hearth", name="Hearth", region="gb-eng", email="desk@hearth.example")
print(new_state("hearth"), invite(firm=firm, name="Kim", role="agent"))
"""
SENT = """
import django; django.setup()
from triage.models import JobSheet
from triage.household.sheet_address import sheet_address
print(sheet_address(JobSheet.objects.get()))
"""


class Stay(HTTPRedirectHandler):
    def redirect_request(self, *_told):
        return None


def ask(site, address, data=None, **headers):
    """The status of an answer, whatever it is."""
    body = urlencode(data).encode() if isinstance(data, dict) else data
    named = {name.replace("_", "-"): value for name, value in headers.items()}
    try:
        with build_opener(Stay).open(Request(site.url + address, body, named), timeout=20) as response:
            return response.status
    except OSError as problem:
        return getattr(problem, "code", None) or f"no answer: {problem}"


def every_page(site, invitation):
    """All kinds of pages with marks in them, and addresses that go wrong."""
    mark = f"complaint={ANSWER}&x={CONTACT}&token=S3CRET"
    pages = [f"{address}&{mark}" for address in PAGES.values()]
    pages += [
        f"{there}?{mark}" for there in ("/call/", "/api/v1/step", "/desk/", "/desk/sign-in/", "/metrics/", "/ready/")
    ]
    pages += [f"/sheet/S3CRET/?{mark}", f"/desk/invitation/{invitation}/?{mark}", f"/no-such-page/{CONTACT}/?{mark}"]
    return {address: ask(site, address, Referer=f"https://a.example/?{mark}") for address in pages}


def hand_over(site, state):
    typed = {"name": CONTACT, "telephone": "020 7946 0000", "street": CONTACT, "agreed": "yes", "state": state}
    asked = {"region": "gb-eng", "firm": "hearth", **answers_of("fan-element-open", "no-heat")}
    there = f"/check/hand-over/?{urlencode(asked)}"
    return [
        ask(site, there, {**typed, "telephone": CONTACT}),
        ask(site, there, typed),
        ask(site, there, b"\x00" * 2000, Content_Type=f"multipart/form-data; boundary={CONTACT}"),
        ask(site, "/desk/sign-in/", {"account": CONTACT, "password": "S3CRET"}),
        ask(site, "/api/v1/firms/hearth/job-sheets", json.dumps({CONTACT: 1}).encode(), Authorization="Bearer S3CRET"),
        ask(site, f"/desk/invitation/S3CRET-{CONTACT}/", {"account": CONTACT}),
        ask(site, f"/check/?complaint={ANSWER}", Host="strange.example"),
    ]


def test_the_production_server_writes_no_answer_and_no_contact(tmp_path):
    with production(tmp_path) as site:
        state, invitation = site.manage(code=PREPARE).split()
        pages = every_page(site, invitation)
        sent = hand_over(site, state)
        link = site.manage(code=SENT).strip()
        assert ask(site, link) == 200
        site.manage("send_deliveries", "--once")
        site.manage("erase_expired")
    assert set(pages.values()) <= {200, 302, 404}
    assert sent[:2] == [422, 302]
    assert all(status in (400, 401, 403, 404, 422) for status in sent[2:]), sent
    said = site.said()
    assert said.count(" GET 200 ") >= len(PAGES)  # the access log is on
    assert '"logger": "triage.jobsheet.actions"' in said  # and so is the site's own
    secret = (*MARKS, invitation, state, link.partition("token=")[2], "020 7946")
    assert [mark for mark in secret if mark in said] == []


def test_the_guide_starts_the_server_with_that_line():
    assert f"--access-log-fmt '{ACCESS_LINE}'" in (ROOT / "DEVELOPERS.md").read_text("utf-8").replace("%%", "%")


def breaks(request, token):
    raise ValueError(f"cannot read {request.META['QUERY_STRING']} of {CONTACT} with {token}")


urlpatterns = [path("breaks/<str:token>/", breaks, name="breaks")]
handler500 = "triage.household.views.mishap.server_error"


@pytest.mark.parametrize("lines", [TextFormatter(), JSONFormatter()])
def test_a_page_that_breaks_is_told_without_what_it_was_asked(client, settings, caplog, lines):
    settings.ROOT_URLCONF = __name__
    client.raise_request_exception = False
    with caplog.at_level(logging.DEBUG):
        assert client.get(f"/breaks/S3CRET/?complaint={ANSWER}").status_code == 500
    written = "\n".join(lines.format(record) for record in caplog.records)
    assert "Internal Server Error: breaks" in written
    assert "builtins.ValueError" in written
    assert [mark for mark in MARKS if mark in written] == []


def test_no_line_of_the_code_logs_more_than_numbers_and_kinds():
    """What is handed to a logger: ids, counts and names of things of ours."""
    named = set()
    for file in (ROOT / "triage").rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(node, ast.Call) and ast.unparse(node.func).startswith("log."):
                named |= {ast.unparse(argument) for argument in node.args[1:]}
    assert named
    private = ("name", "telephone", "email", "street", "postcode", "trail", "token", "secret", "password", "url")
    assert [item for item in named if any(part in private for part in item.split(".")[1:])] == []
