"""The wished-for visit as iCalendar (RFC 5545): one tentative event for each time at home, else a task to arrange one.

METHOD is PUBLISH (RFC 5546), not REQUEST: a request invites attendees to a fixed time and makes their calendar mail an
answer to the organiser, while here nothing is agreed, several times are on offer, and the sender may have no e-mail.
Times are floating: they mean the clock on the oven's wall, which is the repairer's too.
"""

from datetime import UTC, datetime

from django.utils.translation import gettext as _
from icalendar import Calendar, Event, Todo, vCalAddress

from triage.jobsheet.shapes import SheetData, SheetWindow

PRODUCT = "-//oven fault check//job sheet 1//EN"


def visit_request(sheet: SheetData, organizer_email: str) -> str:
    """The calendar file; `organizer_email` is the firm's, and may be empty."""
    calendar = Calendar()
    for name, value in (("VERSION", "2.0"), ("PRODID", PRODUCT), ("CALSCALE", "GREGORIAN"), ("METHOD", "PUBLISH")):
        calendar.add(name, value)
    components: list[Event | Todo] = [_event(window) for window in sheet["windows"]]
    for number, component in enumerate(components or [_task(sheet)], start=1):
        component.add("UID", f"{sheet['reference']}-{number}@job-sheet")
        _describe(component, sheet, organizer_email)
        calendar.add_component(component)
    return str(calendar.to_ical(), "utf-8")


def _event(window: SheetWindow) -> Event:
    event = Event()
    event.add("DTSTART", datetime.fromisoformat(window["start"]))
    event.add("DTEND", datetime.fromisoformat(window["end"]))
    event.add("STATUS", "TENTATIVE")
    event.add("TRANSP", "TRANSPARENT")
    return event


def _task(sheet: SheetData) -> Todo:
    task = Todo()
    task.add("DTSTART", _created(sheet))
    task.add("PRIORITY", 5)
    task.add("STATUS", "NEEDS-ACTION")
    return task


def _describe(component: Event | Todo, sheet: SheetData, organizer_email: str) -> None:
    contact, address = sheet["contact"], sheet["address"]
    place = ", ".join(part for part in (address["street"], address["postcode"]) if part)
    params = {"reference": sheet["reference"], "name": contact["name"], "complaint": sheet["check"]["complaint"]}
    lines = [contact["name"], contact["telephone"], contact["email"], address["access"], sheet["check"]["check_url"]]
    organizer = vCalAddress(f"mailto:{organizer_email}" if organizer_email else "invalid:nomail")
    organizer.params["CN"] = sheet["firm"]["name"].replace('"', "'")  # RFC 5545, 3.2: none can stand in a parameter
    component.add("DTSTAMP", _created(sheet))
    component.add("SEQUENCE", 0)
    component.add("ORGANIZER", organizer)
    component.add("SUMMARY", _("Oven, %(reference)s, %(name)s: %(complaint)s") % params)
    component.add("DESCRIPTION", "\n".join(line for line in lines if line))
    if place:
        component.add("LOCATION", place)


def _created(sheet: SheetData) -> datetime:
    """When the sheet was written, so that the same sheet is always the same file."""
    return datetime.fromisoformat(sheet["created"]).astimezone(UTC)
