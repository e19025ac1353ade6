"""Everything that is kept about one person's hand-over, for that person: what a right of access asks for.

The firm's webhook address and its secret are the firm's, and so are its people: staff are told by their role. An erased
sheet is told as it is now, which is without whose oven it was.
"""

import base64
from collections.abc import Mapping
from datetime import datetime
from typing import Any

from triage.jobsheet.contents import serialize_sheet
from triage.models import AuditEntry, Delivery, JobSheet, Outcome, RatingPlatePhoto


def export_personal_data(sheet: JobSheet) -> dict[str, Any]:
    """Plain values, ready for JSON."""
    return {
        "job_sheet": serialize_sheet(sheet),
        "answers": sheet.answers,
        "place": sheet.region,
        "erased": _time(sheet.erased),
        "agreed": _time(sheet.consented),
        "taken_by_telephone": sheet.taken_by is not None,
        "photo": _photo(sheet),
        "notes_of_the_firm": [{"written": _time(note.created), "text": note.text} for note in sheet.notes.all()],
        "outcome": _outcome(Outcome.objects.filter(sheet=sheet).first()),
        "sent_to_the_firm": [_delivery(row) for row in Delivery.objects.filter(sheet=sheet).order_by("pk")],
        "who_looked": [_line(row) for row in sheet.audit_entries.select_related("member", "key")],
    }


def _photo(sheet: JobSheet) -> Mapping[str, Any] | None:
    photo = RatingPlatePhoto.objects.filter(sheet=sheet).first()
    if photo is None:
        return None
    jpeg = base64.b64encode(bytes(photo.jpeg)).decode()
    return {"width": photo.width, "height": photo.height, "jpeg_in_base64": jpeg}


def _outcome(outcome: Outcome | None) -> Mapping[str, Any] | None:
    if outcome is None:
        return None
    names = ("found", "fitted", "fixed_first_visit", "result", "barrier", "minutes", "pack_version")
    return {"recorded": _time(outcome.recorded), **{name: getattr(outcome, name) for name in names}}


def _delivery(row: Delivery) -> Mapping[str, Any]:
    times = {"created": _time(row.created), "settled": _time(row.settled)}
    return {"channel": row.channel, "event": row.event, "state": row.state, "attempts": row.attempts, **times}


def _line(row: AuditEntry) -> Mapping[str, Any]:
    role = row.member.role if row.member else row.key.name if row.key else ""
    return {"at": _time(row.at), "who": row.actor, "as": role, "did": row.action}


def _time(moment: datetime | None) -> str | None:
    return moment.isoformat(timespec="seconds") if moment else None
