"""A check and a job sheet as plain text: read aloud, copied, mailed, or kept as a file.

The short form is the householder's. The long forms add what only a repairer needs: weights, what to measure, what
to bring. They are worded in `templates/triage/summary/`, the short one on the phone as well.
"""

from collections.abc import Iterator
from typing import Any

from django.utils.translation import gettext as _

from triage.jobsheet.sentences import plain_text
from triage.jobsheet.shapes import CheckSummary, FullSummary, SheetAnswer, SheetData
from triage.jobsheet.wording import short_chance


def short_text(check: CheckSummary) -> str:
    """The short form, for the householder's page."""
    return plain_text("summary/short", check=check)


def long_text(check: FullSummary) -> str:
    """The whole check, for the householder's file."""
    return plain_text("summary/long", **_in_full(check)) + "\n"


def answers_text(check: CheckSummary) -> str:
    """What was answered so far, where the questions are not over."""
    return plain_text("summary/unfinished", check=check) + "\n"


def sheet_text(sheet: SheetData) -> str:
    """The job sheet, for whoever comes."""
    facts = {"sheet": sheet, "visit": list(_visit(sheet)), "erase_after": sheet["erase_after"][:10]}
    return plain_text("summary/job_sheet", **facts, **_in_full(sheet["check"])) + "\n"


def _in_full(check: FullSummary) -> dict[str, Any]:
    """The check with the weight of each answer, and the kit, the most useful part first; the tools that are always
    along are not named."""
    kit = check["kit"]
    weighed = {part: [_weighed(answer) for answer in check[part]] for part in ("answers", "readings", "attempted")}
    parts = [{"name": part["name"], "gain": max(1, round(100 * part["gain"]))} for part in kit["parts"]]
    chances = {"first_visit": kit["first_visit_text"], "at_best": short_chance(kit["max_probability"])}
    return {"check": {**check, **weighed}, "kit": {"parts": parts, **chances}}


def _weighed(answer: SheetAnswer) -> dict[str, Any]:
    weight = answer["decibans"]
    return {**answer, "weight": "" if weight is None else f"{weight:+.1f}"}


def _visit(sheet: SheetData) -> Iterator[str]:
    contact, address, plate = sheet["contact"], sheet["address"], sheet["rating_plate"]
    fields = {
        _("Name"): contact["name"],
        _("Telephone"): contact["telephone"],
        _("E-mail"): contact["email"],
        _("Address"): ", ".join(part for part in (address["street"], address["postcode"]) if part),
        _("Getting in"): address["access"],
        _("Maker"): plate.get("maker", ""),
        _("Model"): plate.get("model", ""),
        _("Serial number"): plate.get("serial", ""),
        _("Rated power"): plate.get("power", ""),
        _("Year"): plate.get("year", ""),
        _("Rating plate"): _("There is a photo of it.") if plate.get("photo") else "",
        _("At home"): "; ".join(window_words(window["start"], window["end"]) for window in sheet["windows"]),
        _("Agreed to"): sheet["consent"]["text"],
    }
    return (f"{name}: {value}" for name, value in fields.items() if value)


def window_words(start: str, end: str) -> str:
    """A window of time as read: one day is named once."""
    day, begins = start.split("T")
    last, ends = end.split("T")
    return f"{day} {begins[:5]}-{ends[:5]}" if day == last else f"{day} {begins[:5]} - {last} {ends[:5]}"
