"""What the sender sees of a job sheet, before and after it is erased."""

import base64
import re

import pytest

from tests.firm_builders import make_booking, make_firm, make_job_sheet
from tests.jobsheet.pictures import jpeg
from tests.reading_pages import read_page
from triage.household.sheet_address import SENT, sheet_address
from triage.jobsheet.actions import erase
from triage.models.audit_entry import Actor

pytestmark = pytest.mark.django_db


@pytest.fixture
def page(client):
    """The page of a sheet as its sender reads it; `new` right after sending."""
    return lambda sheet, new=False: read_page(client.get(sheet_address(sheet) + (f"&{SENT}=1" if new else "")))


def lead(page):
    return page.one(".lead").text


def steps(page):
    return [line.text for line in page.select("main .steps li")]


def test_everything_personal_that_is_kept_is_shown(page):
    sheet = make_job_sheet(booking=make_booking(photo=jpeg(40, 30)))
    found = page(sheet)
    names, values = ([each.text for each in found.select(f"main dl {tag}")] for tag in ("dt", "dd"))
    kept = dict(zip(names, values, strict=True))
    assert kept["Name"] == "Alex Grey"
    assert kept["Serial number"] == "S-17"
    assert kept["At home"] == "2030-05-06 09:00-12:00"
    assert kept["You agreed to"] == sheet.consent
    photo = found.one("img.plate").attributes["src"]
    assert base64.b64decode(photo.partition(",")[2]) == bytes(sheet.photo.jpeg)


def test_right_after_sending_it_says_that_nothing_is_booked_yet(page):
    found = page(make_job_sheet(), new=True)
    assert found.one("h1").text == "Sent to Hearth & Hob Repairs"
    assert lead(found) == "Your visit is asked for. Nothing is booked until they call."
    assert re.fullmatch(r"It is kept until \w+ \d+, \d{4}, then erased\.", lead(page(make_job_sheet())))


def test_it_says_by_which_way_they_will_answer(page):
    only_mail = make_job_sheet(booking=make_booking(telephone=""))
    assert "by e-mail" in steps(page(only_mail, new=True))[0]
    assert "by telephone" in steps(page(make_job_sheet(), new=True))[0]
    assert "To reach them: 555" in steps(page(make_job_sheet(make_firm(telephone="555"))))[-1]


def test_erased_it_shows_nothing_and_says_what_is_left(page):
    sheet = make_job_sheet()
    erase(sheet=sheet, actor=Actor.SENDER)
    found = page(sheet, new=True)
    assert found.one("h1").text == "This was erased"
    assert found.select("main dl, main img, main [data-sent]") == []
    lines = [line.text for line in found.select("main .plain li")]
    assert lines[0].startswith("The answers about the oven stay, without your name")
    assert any("by e-mail is not erased by this" in line for line in lines)
