"""Whatever a householder, a staff member or a firm types is shown as text: on every page, in every file and table."""

import csv
import json
from io import StringIO
from urllib.parse import quote

import pytest
from django.urls import reverse

from tests.attack.whole_site import World
from tests.desk.who_may import token_of
from tests.firm_builders import make_booking, make_job_sheet
from tests.reading_pages import read_page
from triage.jobsheet.booking import LONGEST, SEVERAL_LINES
from triage.jobsheet.formats.table import STARTS_A_FORMULA

pytestmark = pytest.mark.django_db

SCRIPTS = {
    "tag": "<script>alert(1)</script>",
    "way out of an attribute": "\"'><img src=x onerror=alert(1)>",
    "attribute": '" onfocus="alert(1)" autofocus="',
    "end of an element": "</textarea></title></script><svg onload=alert(1)>",
    "template": "{{ desk.firm }}{% include 'triage/500.html' %}",
    "link": "javascript:alert(1)",
    "comment": "--><marquee>loud",
}
READ = ("telephone", "email")  # these are looked at, and nothing but a number and an address gets in
PAGES = ("desk-inbox", "desk-sheet", "desk-outcome", "desk-erase", "desk-calibration", "desk-deliveries", "desk-staff")
TABLES = ("desk-sheets-csv", "desk-open-repair")
LEADS = ("href", "src", "action", "formaction", "xlink:href", "data", "poster")


def typed(words):
    """A booking with the words in every field that takes any text, as far as it takes them."""
    free = {name: words[:most] for name, most in LONGEST.items() if name not in READ}
    return make_booking(**free)


def harms(response):
    """Whatever on a page could run, or leads to something that could."""
    found = []
    for element in read_page(response).all():
        names = element.attributes
        found += [f"{element.tag} {name}" for name in names if name.startswith("on") or name == "style"]
        leads = [names[name].strip().lower() for name in LEADS if name in names]
        found += [lead for lead in leads if lead.startswith(("javascript:", "data:", "vbscript:", "x"))]
        if element.tag == "script" and not names.get("src", "").startswith("/static/"):
            found.append(element.text)
        if element.tag in ("marquee", "iframe", "object", "embed"):
            found.append(element.tag)
    return found


def world_with(words):
    """The firm's world with the words in whatever anybody can type."""
    world = World()
    owner = world.clients["owner"]
    world.sheet = make_job_sheet(world.firm, region="ie", booking=typed(words))
    assert owner.post(world.address("desk-note"), {"text": words}).status_code == 302
    assert owner.post(world.address("desk-staff"), {"name": words, "role": "agent"}).status_code == 302
    outcome = {"found": "fan-element-open", "left": "first-visit", "minutes": "5", "note": words, "other": words}
    assert owner.post(world.address("desk-outcome"), outcome).status_code == 302
    world.firm.name = world.firm.address = words
    world.firm.save()
    return world


@pytest.mark.parametrize("name", SCRIPTS)
def test_every_field_is_shown_as_text_on_every_page_of_the_desk(name):
    words = SCRIPTS[name]
    world = world_with(words)
    for page in PAGES:
        answer = world.clients["owner"].get(world.address(page))
        assert answer.status_code == 200, page
        assert harms(answer) == [], page
    shown = read_page(world.clients["owner"].get(world.address("desk-sheet"))).text
    assert shown.count(" ".join(words.split())) >= 5


@pytest.mark.parametrize("name", SCRIPTS)
def test_the_senders_own_pages_show_it_as_text_too(client, name):
    world = world_with(SCRIPTS[name])
    for there in ("", "erase/"):
        answer = client.get(f"/sheet/{world.sheet.reference}/{there}?token={token_of(world.sheet)}")
        assert answer.status_code == 200
        assert harms(answer) == []
    assert harms(client.get(f"/?firm={world.firm.slug}")) == []


@pytest.mark.parametrize("name", SCRIPTS)
def test_an_address_is_handed_back_as_text(client, name):
    words = quote(SCRIPTS[name])
    told = (
        f"region={words}&complaint={words}&{words}={words}&cost-use={words}&read-a={words}&next={words}&call-id={words}"
    )
    for there in ("/", "/check/", "/danger/", "/check/costs/", "/call/", "/desk/sign-in/", "/no-such-page/"):
        assert harms(client.get(f"{there}?{told}")) == [], there


def test_what_is_no_page_is_never_taken_for_one():
    """Files and answers of the API: their kind is said, and no browser may guess another."""
    world = world_with(SCRIPTS["tag"])
    kinds = {"desk-text": "text/plain", "desk-json": "application/json", "desk-calendar": "text/calendar"}
    for name, kind in {**kinds, "desk-sheets-csv": "text/csv", "desk-open-repair": "text/csv"}.items():
        answer = world.clients["owner"].get(world.address(name))
        assert answer.headers["Content-Type"].startswith(kind), name
        assert answer.headers["X-Content-Type-Options"] == "nosniff", name
        assert answer.headers["Content-Disposition"].startswith("attachment"), name
    told = json.loads(world.clients["owner"].get(world.address("desk-json")).content)
    assert told["contact"]["name"] == SCRIPTS["tag"]


@pytest.mark.parametrize(
    "start", ["=1+1", "+1", "-1+cmd|' /C calc'!A0", "@SUM(1)", "\t=1", " =1", "=HYPERLINK(1)", "\r\n=1"]
)
def test_no_cell_of_any_table_starts_a_formula(start):
    """What a spreadsheet takes for a formula: OWASP, CSV Injection."""
    world = World()
    fields = {name: start for name in LONGEST if name not in (*READ, *SEVERAL_LINES, "year")}
    make_job_sheet(world.firm, region="ie", booking=make_booking(**fields))
    world.firm.name = start
    world.firm.save()
    world.clients["owner"].post(world.address("desk-outcome"), {"found": "fan-element-open", "left": "first-visit"})
    for name in TABLES:
        table = world.clients["owner"].get(reverse(name)).content.decode()
        cells = [cell for row in csv.reader(StringIO(table)) for cell in row]
        assert cells
        assert [cell for cell in cells if cell.lstrip(" ").startswith(STARTS_A_FORMULA)] == []


def test_a_page_that_would_run_something_is_caught():
    page = '<a href=" JavaScript:x">a</a><svg onload="x"></svg><script>x</script><img src="x"><p style="x"></p>'
    assert harms(f"{page}<marquee>b</marquee>") == ["javascript:x", "svg onload", "x", "x", "p style", "marquee"]
