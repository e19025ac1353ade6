"""Whatever a householder, a staff member or a firm types is shown as text: on every page, in every file and table."""

import csv
import json
from io import StringIO
from urllib.parse import quote

import pytest
from django.urls import reverse

from tests.attack.whole_site import World, desk_addresses, is_page
from tests.desk.permissions import token_of
from tests.firm_builders import make_booking, make_job_sheet
from tests.household.hand_overs import form_address
from tests.reading_pages import read_page
from triage.desk.firm_settings import initial_settings
from triage.jobsheet.booking import MAX_LENGTHS, SEVERAL_LINES
from triage.jobsheet.formats.table import STARTS_A_FORMULA
from triage.models import Outcome

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
LINE = ("name", "address", "telephone")  # of a firm, which takes any words there; so do its prices, hours and areas
NAMES_THE_FIRM = ("desk-settings", "desk-invitation", "desk-call-booking", "desk-call")
TABLES = ("desk-sheets-csv", "desk-open-repair")
LEADS = ("href", "src", "action", "formaction", "xlink:href", "data", "poster")


def typed(text):
    """A booking with the words in every field that takes any text, as far as it takes them."""
    free = {name: text[:most] for name, most in MAX_LENGTHS.items() if name not in READ}
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


def world_with(text):
    """The firm's world with the words in whatever anybody can type, sent by the forms that take them."""
    world = World()
    owner = world.clients["owner"]
    world.sheet = make_job_sheet(world.firm, region="ie", booking=typed(text))
    for form, item in filled_in(world.firm, text).items():
        answer = owner.post(world.address(form), item)
        assert answer.status_code == 302, (form, read_page(answer).text)
    world.firm.refresh_from_db()
    # The form refuses an origin that is none; an operator's own hand might not.
    world.firm.origins = [text]
    world.firm.save()
    return world


def filled_in(firm, text):
    """The forms of the desk with the words in every field that keeps any text, at the length it takes."""
    settings = initial_settings(firm) | dict.fromkeys(LINE, text[:40])
    settings |= {"prices": f"{text}: {text}", "hours": f"Any day: {text}", "areas": text}
    return {
        "desk-note": {"text": text},
        "desk-staff": {"name": text, "role": "agent"},
        "desk-keys": {"name": text},
        "desk-outcome": {"found": "fan-element-open", "result": "first-visit", "minutes": "5", "other_parts": text},
        "desk-settings": settings,
    }


def pages_of(world):
    """Every page of the desk as the owner gets it, by its name; files are looked at below. A page of a call is one at
    its end, with the words for the reference a caller spells."""
    for name, address in desk_addresses(world, f"&call-earlier={quote(world.firm.name)}"):
        answer = world.clients["owner"].get(address, follow=True)
        if is_page(answer):
            yield name, answer


@pytest.mark.parametrize("name", SCRIPTS)
def test_every_field_is_shown_as_text_on_every_page_of_the_desk(name):
    text = SCRIPTS[name]
    world = world_with(text)
    shown = dict(pages_of(world))
    for page, answer in shown.items():
        assert answer.status_code in (200, 403, 404), page
        assert harms(answer) == [], page
    said = " ".join(text.split())
    assert read_page(shown["desk-sheet"]).text.count(said) >= 5
    assert said in read_page(shown["desk-outcome"]).text
    assert all(read_page(shown["desk-settings"]).one(f"#id_{name}").text.count(said) for name in ("prices", "areas"))
    for page in NAMES_THE_FIRM:
        assert said[:40] in whole(shown[page]), page
    assert Outcome.objects.get().fitted == [said]


def whole(answer):
    """All that a page says: its words and what stands in its fields."""
    page = read_page(answer)
    return " ".join([page.text, *(box.attributes["value"] for box in page.select("input[value]"))])


@pytest.mark.parametrize("name", SCRIPTS)
def test_what_a_form_refuses_comes_back_as_text(name):
    text = SCRIPTS[name]
    world = world_with(text)
    fields = ("found", "fitted", "left", "barrier", "other_fault", "other_parts", "minutes", "other_minutes")
    refused = {
        "desk-outcome": dict.fromkeys(fields, text),
        "desk-settings": dict.fromkeys(initial_settings(world.firm), text),
        "desk-call-booking": dict.fromkeys((*MAX_LENGTHS, "notes", "state", "day-1", "agreed"), text),
        "desk-staff": {"name": text, "role": text},
        "desk-note": {"text": text * 1000},
        "desk-sign-in": {"account": text, "password": text},
        "desk-second-factor": {"code": text},
        "desk-account": {"old": text, "new": text},
    }
    calls = dict(desk_addresses(world))
    for page, item in refused.items():
        answer = world.clients["owner"].post(calls.get(page) or world.address(page), item, follow=True)
        assert answer.status_code in (200, 400, 422), page
        assert harms(answer) == [], page


@pytest.mark.parametrize("name", SCRIPTS)
def test_the_senders_own_pages_show_it_as_text_too(client, name):
    world = world_with(SCRIPTS[name])
    for there in ("", "erase/"):
        answer = client.get(f"/sheet/{world.sheet.reference}/{there}?token={token_of(world.sheet)}")
        assert answer.status_code == 200
        assert harms(answer) == []
    form = client.get(form_address(world.firm))
    assert harms(form) == harms(client.get(f"/?firm={world.firm.slug}")) == []
    assert read_page(form).one("dl.firm-says").text.count(" ".join(SCRIPTS[name].split())) >= 3


@pytest.mark.parametrize("name", SCRIPTS)
def test_an_address_is_handed_back_as_text(client, name):
    label = quote(SCRIPTS[name])
    text = (
        f"region={label}&complaint={label}&{label}={label}&cost-use={label}&read-a={label}&next={label}&call-id={label}"
    )
    for there in ("/", "/check/", "/danger/", "/check/costs/", "/desk/sign-in/", "/no-such-page/"):
        assert harms(client.get(f"{there}?{text}")) == [], there


@pytest.mark.parametrize("name", SCRIPTS)
def test_an_address_of_the_desk_is_handed_back_as_text(name):
    world, label = World(), quote(SCRIPTS[name])
    at = "".join(f"&{about}={label}" for about in ("earlier", "id", "ask", "who", "oven", "board", "alone", "home"))
    text = f"region={label}&complaint={label}&{label}={label}{at.replace('&', '&call-')}"
    text += f"&words={label}&since={label}&until={label}&status={label}&band={label}&page={label}&next={label}"
    for page, address in desk_addresses(world):
        answer = world.clients["owner"].get(f"{address.partition('?')[0]}?{text}", follow=True)
        assert not is_page(answer) or harms(answer) == [], page


def test_what_is_no_page_is_never_taken_for_one():
    """Files and answers of the API: their kind is said, and no browser may guess another."""
    world = world_with(SCRIPTS["tag"])
    kinds = {"desk-text": "text/plain", "desk-json": "application/json", "desk-calendar": "text/calendar"}
    for name, kind in {**kinds, "desk-sheets-csv": "text/csv", "desk-open-repair": "text/csv"}.items():
        answer = world.clients["owner"].get(world.address(name))
        assert answer.headers["Content-Type"].startswith(kind), name
        assert answer.headers["X-Content-Type-Options"] == "nosniff", name
        assert answer.headers["Content-Disposition"].startswith("attachment"), name
    payload = json.loads(world.clients["owner"].get(world.address("desk-json")).content)
    assert payload["contact"]["name"] == SCRIPTS["tag"]


@pytest.mark.parametrize(
    "start", ["=1+1", "+1", "-1+cmd|' /C calc'!A0", "@SUM(1)", "\t=1", " =1", "=HYPERLINK(1)", "\r\n=1"]
)
def test_no_cell_of_any_table_starts_a_formula(start):
    """What a spreadsheet takes for a formula: OWASP, CSV Injection."""
    world = World()
    fields = {name: start for name in MAX_LENGTHS if name not in (*READ, *SEVERAL_LINES, "year")}
    make_job_sheet(world.firm, region="ie", booking=make_booking(**fields))
    world.firm.name = start
    world.firm.save()
    outcome = filled_in(world.firm, start)["desk-outcome"]
    assert world.clients["owner"].post(world.address("desk-outcome"), outcome).status_code == 302
    assert Outcome.objects.get().fitted == [" ".join(start.split())]
    for name in TABLES:
        table = world.clients["owner"].get(reverse(name)).content.decode()
        cells = [cell for row in csv.reader(StringIO(table)) for cell in row]
        assert cells
        assert [cell for cell in cells if cell.lstrip(" ").startswith(STARTS_A_FORMULA)] == []


def test_a_page_that_would_run_something_is_caught():
    page = '<a href=" JavaScript:x">a</a><svg onload="x"></svg><script>x</script><img src="x"><p style="x"></p>'
    assert harms(f"{page}<marquee>b</marquee>") == ["javascript:x", "svg onload", "x", "x", "p style", "marquee"]
