"""The wished-for visit, read back by an independent library (icalendar)."""

from datetime import UTC, datetime

import icalendar
import pytest

from tests.jobsheet.sheets import NIGHT, make_sheet
from triage.jobsheet.formats.calendar import visit_request

FIRM = "desk@hearth.example"
UNRULY = 'Semi; comma, back\\slash\nnew line: "quoted" 👩‍🔧 ' + "מאד ארוך " * 30


def read(sheet, email=FIRM):
    return icalendar.Calendar.from_ical(visit_request(sheet, email))


def test_each_time_at_home_is_a_tentative_event_that_blocks_nothing():
    calendar = read(make_sheet())
    first, second = calendar.walk("VEVENT")
    assert calendar["METHOD"] == "PUBLISH"
    assert first.decoded("DTSTART") == datetime(2030, 5, 6, 9)  # noqa: DTZ001  (floating: the clock on the wall)
    assert second.decoded("DTEND") == datetime(2030, 5, 8, 8)  # noqa: DTZ001
    assert {event["STATUS"] for event in (first, second)} == {"TENTATIVE"}
    assert {event["TRANSP"] for event in (first, second)} == {"TRANSPARENT"}
    assert first["UID"] != second["UID"]
    assert first["SUMMARY"] == "Oven, KD7MX-4QPTR, Alex Grey: No heat at all"
    assert first["LOCATION"] == "3 Mill Lane, AB1 2CD"


def test_without_a_time_it_is_a_task_to_arrange_one():
    calendar = read(make_sheet(windows=[]))
    (task,) = calendar.walk("VTODO")
    assert task["STATUS"] == "NEEDS-ACTION"
    assert task.decoded("DTSTAMP") == NIGHT.replace(tzinfo=UTC)
    assert not calendar.walk("VEVENT")


# RFC 5546, 3.2.1 and 3.4.1: a published component has an organizer and no attendee.
@pytest.mark.parametrize("windows", [[], make_sheet()["windows"]])
@pytest.mark.parametrize(("email", "organizer"), [(FIRM, f"mailto:{FIRM}"), ("", "invalid:nomail")])
def test_the_organizer_is_the_firm_and_nobody_is_invited(windows, email, organizer):
    part = read(make_sheet(windows=windows), email).walk()[1]
    assert part["ORGANIZER"] == organizer
    assert part["ORGANIZER"].params["CN"] == "Hearth & Hob Repairs"
    assert "ATTENDEE" not in part


def test_whatever_people_write_comes_back_as_they_wrote_it():
    sheet = make_sheet(
        contact={"name": UNRULY.replace("\n", " "), "telephone": "", "email": ""},
        address={"street": UNRULY.replace("\n", " "), "postcode": "", "access": UNRULY},
        firm={"slug": "x", "name": 'The "Best", Ltd; 100:1'},
    )
    event = read(sheet).walk("VEVENT")[0]
    assert event["LOCATION"] == UNRULY.replace("\n", " ")
    assert UNRULY in event["DESCRIPTION"]
    assert event["ORGANIZER"].params["CN"] == "The 'Best', Ltd; 100:1"


def test_no_line_is_longer_than_the_standard_allows():
    lines = visit_request(make_sheet(firm={"slug": "x", "name": UNRULY.replace("\n", " ")}), FIRM).split("\r\n")
    assert max(len(line.encode()) for line in lines) <= 75  # RFC 5545, 3.1
    assert all("\n" not in line for line in lines)


def test_the_same_sheet_is_always_the_same_file():
    assert visit_request(make_sheet(), FIRM) == visit_request(make_sheet(), FIRM)
