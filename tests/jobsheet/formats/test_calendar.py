"""The wished-for visit, read back by the rules of RFC 5545 themselves."""

import pytest

from tests.jobsheet.formats.calendar_reader import read_calendar
from tests.jobsheet.sheets import NIGHT, make_sheet
from triage.jobsheet.formats.calendar import visit_request

FIRM = "desk@hearth.example"
UNRULY = 'Semi; comma, back\\slash\nnew line: "quoted" 👩‍🔧 ' + "מאד ארוך " * 30


def read(sheet, email=FIRM):
    return read_calendar(visit_request(sheet, email))


def test_each_time_at_home_is_a_tentative_event_that_blocks_nothing():
    calendar = read(make_sheet())
    first, second = calendar.inside
    assert calendar.kind == "VCALENDAR"
    assert calendar.values == {
        "VERSION": "2.0",
        "PRODID": "-//oven fault check//job sheet 1//EN",
        "CALSCALE": "GREGORIAN",
        "METHOD": "PUBLISH",
    }
    assert {event.kind for event in (first, second)} == {"VEVENT"}
    assert first.values["DTSTART"] == "20300506T090000"  # floating: the clock on the wall
    assert second.values["DTEND"] == "20300508T080000"
    assert first.parameters["DTSTART"] == second.parameters["DTEND"] == {}
    assert {event.values["STATUS"] for event in (first, second)} == {"TENTATIVE"}
    assert {event.values["TRANSP"] for event in (first, second)} == {"TRANSPARENT"}
    assert [event.values["UID"] for event in (first, second)] == ["KD7MX-4QPTR-1@job-sheet", "KD7MX-4QPTR-2@job-sheet"]
    assert first.text("SUMMARY") == "Oven, KD7MX-4QPTR, Alex Grey: No heat at all"
    assert first.text("LOCATION") == "3 Mill Lane, AB1 2CD"


def test_without_a_time_it_is_a_task_to_arrange_one():
    (task,) = read(make_sheet(windows=[])).inside
    assert task.kind == "VTODO"
    assert (task.values["STATUS"], task.values["PRIORITY"], task.values["SEQUENCE"]) == ("NEEDS-ACTION", "5", "0")
    assert task.values["DTSTAMP"] == task.values["DTSTART"] == f"{NIGHT:%Y%m%dT%H%M%SZ}"


# RFC 5546, 3.2.1 and 3.4.1: a published component has an organizer and no attendee.
@pytest.mark.parametrize("windows", [[], make_sheet()["windows"]])
@pytest.mark.parametrize(("email", "organizer"), [(FIRM, f"mailto:{FIRM}"), ("", "invalid:nomail")])
def test_the_organizer_is_the_firm_and_nobody_is_invited(windows, email, organizer):
    component = read(make_sheet(windows=windows), email).inside[0]
    assert component.values["ORGANIZER"] == organizer
    assert component.parameters["ORGANIZER"] == {"CN": "Hearth & Hob Repairs"}
    assert "ATTENDEE" not in component.values


def test_whatever_people_write_comes_back_as_they_wrote_it():
    one_line = UNRULY.replace("\n", " ")
    sheet = make_sheet(
        contact={"name": one_line, "telephone": "", "email": ""},
        address={"street": one_line, "postcode": "", "access": UNRULY},
        firm={"slug": "x", "name": 'The "Best", Ltd; 100:1'},
    )
    event = read(sheet).inside[0]
    assert event.text("LOCATION") == one_line
    assert event.text("DESCRIPTION") == f"{one_line}\n{UNRULY}\n{sheet['check']['check_url']}"
    assert event.parameters["ORGANIZER"] == {"CN": "The 'Best', Ltd; 100:1"}


def test_a_long_name_of_a_firm_is_folded_too():
    one_line = UNRULY.replace("\n", " ")
    component = read(make_sheet(firm={"slug": "x", "name": one_line})).inside[0]
    assert component.parameters["ORGANIZER"] == {"CN": one_line.replace('"', "'")}


def test_the_same_sheet_is_always_the_same_file():
    assert visit_request(make_sheet(), FIRM) == visit_request(make_sheet(), FIRM)
