"""The wished-for visit as iCalendar (RFC 5545): one tentative event for each time at home, else a task to arrange one.

METHOD is PUBLISH (RFC 5546), not REQUEST: a request invites attendees to a fixed time and makes their calendar mail an
answer to the organiser, while here nothing is agreed, several times are on offer, and the sender may have no e-mail.
Times are floating: they mean the clock on the oven's wall, which is the repairer's too.
"""

from collections.abc import Iterator
from datetime import UTC, datetime

from django.utils.translation import gettext as _

from triage.jobsheet.shapes import Sheet

LONGEST_LINE = 75  # octets, without the line break
PRODUCT = "-//oven fault check//job sheet 1//EN"


def visit_request(sheet: Sheet, organizer_email: str) -> str:
    """The calendar file; `organizer_email` is the firm's, and may be empty."""
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:{PRODUCT}", "CALSCALE:GREGORIAN", "METHOD:PUBLISH"]
    if sheet["windows"]:
        for number in range(len(sheet["windows"])):
            lines += _event(sheet, number, organizer_email)
    else:
        lines += _to_arrange(sheet, organizer_email)
    return "".join(f"{folded}\r\n" for line in [*lines, "END:VCALENDAR"] for folded in _folded(line))


def _event(sheet: Sheet, number: int, organizer_email: str) -> Iterator[str]:
    window = sheet["windows"][number]
    yield "BEGIN:VEVENT"
    yield f"UID:{sheet['reference']}-{number + 1}@job-sheet"
    yield from _shared(sheet, organizer_email)
    yield f"DTSTART:{_floating(window['start'])}"
    yield f"DTEND:{_floating(window['end'])}"
    yield "STATUS:TENTATIVE"
    yield "TRANSP:TRANSPARENT"
    yield "END:VEVENT"


def _to_arrange(sheet: Sheet, organizer_email: str) -> Iterator[str]:
    yield "BEGIN:VTODO"
    yield f"UID:{sheet['reference']}-1@job-sheet"
    yield from _shared(sheet, organizer_email)
    yield f"DTSTART:{_stamp(sheet)}"
    yield "PRIORITY:5"
    yield "STATUS:NEEDS-ACTION"
    yield "END:VTODO"


def _shared(sheet: Sheet, organizer_email: str) -> Iterator[str]:
    contact, address = sheet["contact"], sheet["address"]
    place = ", ".join(part for part in (address["street"], address["postcode"]) if part)
    words = {"reference": sheet["reference"], "name": contact["name"], "trouble": sheet["check"]["trouble"]}
    told = [contact["name"], contact["telephone"], contact["email"], address["access"], sheet["check"]["check_again"]]
    yield f"DTSTAMP:{_stamp(sheet)}"
    yield "SEQUENCE:0"
    yield f"ORGANIZER;CN={_parameter(sheet['firm']['name'])}:{_calendar_user(organizer_email)}"
    yield f"SUMMARY:{_text(_('Oven, %(reference)s, %(name)s: %(trouble)s') % words)}"
    yield f"DESCRIPTION:{_text(chr(10).join(line for line in told if line))}"
    if place:
        yield f"LOCATION:{_text(place)}"


def _stamp(sheet: Sheet) -> str:
    """When the sheet was written, in UTC, so that the same sheet is always the same file."""
    return f"{datetime.fromisoformat(sheet['created']).astimezone(UTC):%Y%m%dT%H%M%SZ}"


def _floating(time: str) -> str:
    return f"{datetime.fromisoformat(time):%Y%m%dT%H%M%S}"


def _calendar_user(email: str) -> str:
    return f"mailto:{email}" if email else "invalid:nomail"


def _text(text: str) -> str:
    r"""TEXT of RFC 5545, 3.3.11: backslash, semicolon, comma and line break are escaped."""
    for sign, escaped in (("\\", "\\\\"), (";", "\\;"), (",", "\\,"), ("\n", "\\n")):
        text = text.replace(sign, escaped)
    return text


def _parameter(text: str) -> str:
    """A quoted parameter value: RFC 5545, 3.2 has no way to write a quotation mark in one."""
    return '"' + text.replace('"', "'") + '"'


def _folded(line: str) -> Iterator[str]:
    """The line in pieces of at most 75 octets, each after the first begun with a space; no letter is cut in two."""
    piece = ""
    for sign in line:
        if len((piece + sign).encode()) > LONGEST_LINE:
            yield piece
            piece = " "
        piece += sign
    yield piece
