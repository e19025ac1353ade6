"""What the sender sees of a job sheet, before and after it is erased."""

import base64

import pytest

from tests.firm_builders import make_booking, make_firm, make_job_sheet
from tests.jobsheet.pictures import jpeg
from triage.household.presenters.sheet import sheet_page
from triage.jobsheet.actions import erase
from triage.models.audit_entry import Actor

pytestmark = pytest.mark.django_db


def page(sheet, new=False):
    return sheet_page(sheet, "token", "https://check.example", "/sheet/X/?token=token", new)


def test_everything_personal_that_is_kept_is_shown():
    sheet = make_job_sheet(booking=make_booking(photo=jpeg(40, 30)))
    found = page(sheet)
    kept = {line.name: line.words for line in found.kept}
    assert kept["Name"] == "Alex Grey"
    assert kept["Serial number"] == "S-17"
    assert kept["At home"] == "2030-05-06 09:00-12:00"
    assert kept["You agreed to"] == sheet.consent
    assert base64.b64decode(found.photo.partition(",")[2]) == bytes(sheet.photo.jpeg)
    assert found.own_address == "https://check.example/sheet/X/?token=token"


def test_right_after_sending_it_says_that_nothing_is_booked_yet():
    found = page(make_job_sheet(), new=True)
    assert found.heading == "Sent to Hearth & Hob Repairs"
    assert found.lead == "Your visit is asked for. Nothing is booked until they call."


def test_it_says_by_which_way_they_will_answer():
    only_mail = make_job_sheet(booking=make_booking(telephone=""))
    assert "by e-mail" in page(only_mail, new=True).next[0]
    assert "by telephone" in page(make_job_sheet(), new=True).next[0]
    assert "To reach them: 555" in page(make_job_sheet(make_firm(telephone="555"))).next[-1]


def test_erased_it_shows_nothing_and_says_what_is_left():
    sheet = make_job_sheet()
    erase(sheet=sheet, actor=Actor.SENDER)
    found = page(sheet, new=True)
    assert (found.heading, found.new, found.kept, found.photo, found.erase_href) == (
        "This was erased",
        False,
        [],
        "",
        "",
    )
    assert found.next[0].startswith("The answers about the oven stay, without your name")
    assert any("by e-mail is not erased by this" in line for line in found.next)
