"""A check and a job sheet as plain text: read aloud, copied, mailed, or kept as a file.

The short form is the householder's. The long forms add what only a repairer needs: weights, what to measure, what
to bring.
"""

from collections.abc import Iterable, Iterator

from django.utils.translation import gettext as _

from triage.engine import Band
from triage.jobsheet.shapes import CheckSummary, FullSummary, SheetAnswer, SheetCause, SheetData
from triage.jobsheet.wording import short_chance


def short_text(check: CheckSummary) -> str:
    """The short form, for the householder's page."""
    seen = (_line(answer) for answer in (*check["answers"], *check["readings"], *check["attempted"]))
    parts = [
        _head(check),
        _section(_("KIND OF OVEN"), map(_line, check["oven"])),
        _section(_("WHAT WAS SEEN"), seen),
        _section(_("LIKELY CAUSES, of ovens that answer like this"), map(_cause, check["causes"])),
        _foot(check),
    ]
    return "\n\n".join(part for part in parts if part)


def long_text(check: FullSummary) -> str:
    """The whole check, for the householder's file."""
    return "\n\n".join(part for part in (_head(check), *_body(check), _foot(check)) if part) + "\n"


def answers_text(check: CheckSummary) -> str:
    """What was answered so far, where the questions are not over."""
    answers = [*check["oven"], *check["answers"], *check["readings"], *check["attempted"]]
    lines = [_("What is wrong: %(complaint)s") % {"complaint": check["complaint"]}, *map(_line, answers)]
    return "\n\n".join([_title(), _section(_("ANSWERS SO FAR"), lines), _foot(check)]) + "\n"


def sheet_text(sheet: SheetData) -> str:
    """The job sheet, for whoever comes."""
    check = sheet["check"]
    unfinished = "" if check["finished"] else _("The questions were not finished. This is what is known so far.")
    parts = [_top(sheet), _head(check), unfinished, _section(_("FOR THE VISIT"), _visit(sheet)), *_body(check)]
    last = _("Kept until %(day)s, then erased.") % {"day": sheet["erase_after"][:10]}
    return "\n\n".join(part for part in (*parts, _foot(check), last) if part) + "\n"


def _title() -> str:
    return _("OVEN FAULT CHECK")


def _section(heading: str, lines: Iterable[str]) -> str:
    items = [f"- {line}" for line in lines]
    return "\n".join([heading, *items]) if items else ""


def _head(check: CheckSummary) -> str:
    lines = [_title(), _("Trouble: %(complaint)s") % {"complaint": check["complaint"]}]
    lines += [_("Danger sign: %(sign)s") % {"sign": flag["heading"]} for flag in check["red_flags"]]
    if check["danger_signs"] == "none-seen":
        lines.append(_("Danger signs: none seen"))
    elif check["danger_signs"] == "not-asked":
        lines.append(_("Danger signs: not asked"))
    if check["band"] == Band.MAKE_SAFE.value:
        lines.append(_("Advice given: leave it off until it has been checked"))
    lines.append(_("Supply: %(state)s") % {"state": _lower_first(check["supply"]["text"])})
    return "\n".join(lines)


def _lower_first(text: str) -> str:
    return text[:1].lower() + text[1:]


def _body(check: FullSummary) -> Iterator[str]:
    seen = (_weighed(answer) for answer in (*check["answers"], *check["readings"], *check["attempted"]))
    also = (fault["name"] for fault in check["related"])
    yield _section(_("KIND OF OVEN"), map(_line, check["oven"]))
    yield _section(_("ANSWERS (weight for the likeliest cause, in decibans: above zero points to it)"), seen)
    yield _section(_("LIKELY CAUSES, of ovens that answer like this"), map(_cause, check["causes"]))
    yield _section(_("ALSO CHECK"), also)
    yield _section(_("TOLD TO DO FIRST"), (line for flag in check["red_flags"] for line in flag["instructed"]))
    yield _section(
        _("KIT, beside meters and hand tools (visits in 100 that would not be finished without it)"), _kit(check)
    )
    yield _section(
        _("FOR THE REPAIRER: a skilled person with test gear, the oven proved dead"), map(_trade, check["causes"])
    )


def _line(answer: SheetAnswer) -> str:
    return f"{answer['question']}: {answer['text']}"


def _weighed(answer: SheetAnswer) -> str:
    weight = answer["decibans"]
    return _line(answer) if weight is None else f"{_line(answer)} ({weight:+.1f})"


def _cause(cause: SheetCause) -> str:
    return f"{cause['probability_text']}: {cause['name']} ({cause['trade']})"


def _trade(cause: SheetCause) -> str:
    bring = _(" Bring: %(parts)s.") % {"parts": ", ".join(cause["parts_to_bring"])} if cause["parts_to_bring"] else ""
    return f"{cause['name']}: {cause['technician_notes']}{bring}"


def _kit(check: FullSummary) -> Iterator[str]:
    """The most useful part first; the tools that are always along are not named."""
    kit = check["kit"]
    for part in kit["parts"]:
        params = {"part": part["name"], "gain": max(1, round(100 * part["gain"]))}
        yield _("%(part)s (%(gain)s)") % params
    params = {
        "share": _lower_first(kit["first_visit_text"]),
        "best": _lower_first(short_chance(kit["max_probability"])),
    }
    yield _("First-visit chance with this kit: %(share)s, as far as parts go.") % params
    yield _("With every part there is: %(best)s.") % params


def _top(sheet: SheetData) -> str:
    params = {"reference": sheet["reference"], "spelled": sheet["spelled"], "firm": sheet["firm"]["name"]}
    return _("JOB SHEET %(reference)s for %(firm)s\nSay: %(spelled)s") % params


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


def _foot(check: CheckSummary) -> str:
    version = {"pack": check["pack"]["version"], "place": check["region"]["name"]}
    return "\n".join(
        [
            _("Knowledge: %(pack)s, %(place)s. Local rules and licensed practice come first.") % version,
            _("This check again: %(address)s") % {"address": check["check_url"]},
        ]
    )
