"""A job sheet as a repairer reads it: nobody proved anything dead, and every figure is the frozen one."""

import pytest

from tests.firm_builders import ANSWERS, make_job_sheet, make_member
from tests.pack_texts import fault_name
from triage.desk.presenters.job_sheet import audit_lines, sheet_page
from triage.jobsheet.access import open_as_member
from triage.jobsheet.actions import add_note, erase
from triage.jobsheet.contents import serialize_sheet
from triage.models.audit_entry import Actor

FAN_ELEMENT = fault_name("fan-element-open")

pytestmark = pytest.mark.django_db

SMELL = (("complaint", "smell"), ("smell-type", "plastic-or-fishy"))


def page_of(**changes):
    return sheet_page(serialize_sheet(make_job_sheet(**changes)))


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ("yes", "Said to be off. Not proved dead."),
        ("no", "Said not to be off. Not proved dead."),
        ("unsure", "Not said to be off. Not proved dead."),
    ],
)
def test_the_supply_is_never_said_to_be_dead(said, words):
    assert page_of(answers=(*ANSWERS[:-1], ("supply-off", said))).safety.supply == words


def test_danger_is_told_first_with_what_they_were_told():
    safety = page_of(answers=SMELL).safety
    assert (safety.urgent, safety.heading) == (True, "Not safe: leave it off")
    assert safety.signs == ("Burning smell: switch off and leave off",)
    assert "Turn the oven's controls to off. Leave the door shut." in safety.instructions
    assert not any(line.endswith(":") for line in safety.instructions)


def test_it_is_said_that_no_danger_sign_was_seen():
    safety = page_of().safety
    assert (safety.urgent, safety.signs) == (False, ("No danger sign was seen.",))


def test_a_sheet_of_before_says_that_nobody_asked_about_danger():
    sheet = make_job_sheet()
    sheet.summary["danger_signs"] = "not-asked"
    assert sheet_page(serialize_sheet(sheet)).safety.signs == ("Danger signs were not asked about.",)


def test_the_leading_cause_glows_and_is_not_listed_as_its_own_double():
    page = page_of()
    assert page.part == "ring"
    assert page.causes[0].name == FAN_ELEMENT
    assert page.causes[0].name not in page.alike
    assert page.causes[0].chance == f"About {page.causes[0].tenths} in 10"


def test_the_plate_has_its_five_lines_and_the_contact_only_what_was_given():
    page = page_of()
    assert page.plate == (
        ("Maker", "Ovenworks"),
        ("Model", "OW-60"),
        ("Serial", "S-17"),
        ("Power", "2.9 kW"),
        ("Year", "2015"),
    )
    assert [name for name, _ in page.contact] == ["Name", "Telephone", "E-mail", "Address", "Getting in"]
    assert page.windows == ("2030-05-06 09:00-12:00",)


def test_a_fault_the_pack_does_not_know_any_more_marks_no_part():
    contents = serialize_sheet(make_job_sheet())
    contents["check"]["causes"][0]["fault"] = "gone-fault"
    assert sheet_page(contents).part == ""


@pytest.mark.django_db
def test_every_action_is_a_line_of_the_access_log():
    sheet = make_job_sheet()
    member = make_member(sheet.firm, username="robin")
    open_as_member(member, sheet.reference)
    add_note(sheet=sheet, text="Called.", member=member)
    erase(sheet=sheet, actor=Actor.SITE)
    lines = ["this site erased the personal data", "robin added a note", "robin opened it", "the sender created it"]
    assert [line.text for line in audit_lines(sheet)] == lines
    member.delete()
    assert audit_lines(sheet)[2].text == "a former member opened it"
