"""A check and a job sheet as plain text: read aloud, copied, mailed, or kept as a file.

The short form is the householder's. The long forms add what only a repairer needs: weights, what to measure, what
to bring.
"""

from collections.abc import Iterable, Iterator

from django.utils.translation import gettext as _

from triage.engine import Band
from triage.jobsheet.shapes import Answer, Cause, Sheet, Summary, Told
from triage.jobsheet.wording import short_chance


def short_text(check: Told) -> str:
    """The short form, for the householder's page."""
    seen = (_line(answer) for answer in (*check["answers"], *check["readings"], *check["tried"]))
    parts = [
        _head(check),
        _section(_("KIND OF OVEN"), map(_line, check["oven"])),
        _section(_("WHAT WAS SEEN"), seen),
        _section(_("LIKELY CAUSES, of ovens that answer like this"), map(_cause, check["causes"])),
        _foot(check),
    ]
    return "\n\n".join(part for part in parts if part)


def long_text(check: Summary) -> str:
    """The whole check, for the householder's file."""
    return "\n\n".join(part for part in (_head(check), *_body(check), _foot(check)) if part) + "\n"


def answers_text(check: Told) -> str:
    """What was answered so far, where the questions are not over."""
    told = [*check["oven"], *check["answers"], *check["readings"], *check["tried"]]
    lines = [_("What is wrong: %(words)s") % {"words": check["trouble"]}, *map(_line, told)]
    return "\n\n".join([_title(), _section(_("ANSWERS SO FAR"), lines), _foot(check)]) + "\n"


def sheet_text(sheet: Sheet) -> str:
    """The job sheet, for whoever comes."""
    check = sheet["check"]
    unfinished = "" if check["finished"] else _("The questions were not finished. This is what is known so far.")
    parts = [_top(sheet), _head(check), unfinished, _section(_("FOR THE VISIT"), _visit(sheet)), *_body(check)]
    last = _("Kept until %(day)s, then erased.") % {"day": sheet["erase_after"][:10]}
    return "\n\n".join(part for part in (*parts, _foot(check), last) if part) + "\n"


def _title() -> str:
    return _("OVEN FAULT CHECK")


def _section(heading: str, lines: Iterable[str]) -> str:
    told = [f"- {line}" for line in lines]
    return "\n".join([heading, *told]) if told else ""


def _head(check: Told) -> str:
    lines = [_title(), _("Trouble: %(words)s") % {"words": check["trouble"]}]
    lines += [_("Danger sign: %(sign)s") % {"sign": flag["heading"]} for flag in check["red_flags"]]
    if check["danger_signs"] == "none-seen":
        lines.append(_("Danger signs: none seen"))
    elif check["danger_signs"] == "not-asked":
        lines.append(_("Danger signs: not asked"))
    if check["band"] == Band.MAKE_SAFE.value:
        lines.append(_("Advice given: leave it off until it has been checked"))
    lines.append(_("Supply: %(words)s") % {"words": _lower_first(check["supply"]["words"])})
    return "\n".join(lines)


def _lower_first(words: str) -> str:
    return words[:1].lower() + words[1:]


def _body(check: Summary) -> Iterator[str]:
    seen = (_weighed(answer) for answer in (*check["answers"], *check["readings"], *check["tried"]))
    also = (fault["name"] for fault in check["also_check"])
    yield _section(_("KIND OF OVEN"), map(_line, check["oven"]))
    yield _section(_("ANSWERS (weight for the likeliest cause, in decibans: above zero points to it)"), seen)
    yield _section(_("LIKELY CAUSES, of ovens that answer like this"), map(_cause, check["causes"]))
    yield _section(_("ALSO CHECK"), also)
    yield _section(_("TOLD TO DO FIRST"), (line for flag in check["red_flags"] for line in flag["told"]))
    yield _section(
        _("KIT, beside meters and hand tools (visits in 100 that would not be finished without it)"), _kit(check)
    )
    yield _section(
        _("FOR THE REPAIRER: a skilled person with test gear, the oven proved dead"), map(_trade, check["causes"])
    )


def _line(answer: Answer) -> str:
    return f"{answer['question']}: {answer['words']}"


def _weighed(answer: Answer) -> str:
    weight = answer["decibans"]
    return _line(answer) if weight is None else f"{_line(answer)} ({weight:+.1f})"


def _cause(cause: Cause) -> str:
    return f"{cause['chance_words']}: {cause['name']} ({cause['trade']})"


def _trade(cause: Cause) -> str:
    bring = _(" Bring: %(parts)s.") % {"parts": ", ".join(cause["bring"])} if cause["bring"] else ""
    return f"{cause['name']}: {cause['for_the_repairer']}{bring}"


def _kit(check: Summary) -> Iterator[str]:
    """The most useful part first; the tools that are always along are not named."""
    kit = check["kit"]
    for carried in kit["parts"]:
        words = {"part": carried["name"], "gain": max(1, round(100 * carried["gain"]))}
        yield _("%(part)s (%(gain)s)") % words
    chances = {"share": _lower_first(kit["first_visit_words"]), "best": _lower_first(short_chance(kit["at_best"]))}
    yield _("First-visit chance with this kit: %(share)s, as far as parts go.") % chances
    yield _("With every part there is: %(best)s.") % chances


def _top(sheet: Sheet) -> str:
    words = {"reference": sheet["reference"], "spoken": sheet["spoken"], "firm": sheet["firm"]["name"]}
    return _("JOB SHEET %(reference)s for %(firm)s\nSay: %(spoken)s") % words


def _visit(sheet: Sheet) -> Iterator[str]:
    contact, address, plate = sheet["contact"], sheet["address"], sheet["rating_plate"]
    told = {
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
        _("Agreed to"): sheet["consent"]["words"],
    }
    return (f"{name}: {words}" for name, words in told.items() if words)


def window_words(start: str, end: str) -> str:
    """A window of time as read: one day is named once."""
    day, begins = start.split("T")
    last, ends = end.split("T")
    return f"{day} {begins[:5]}-{ends[:5]}" if day == last else f"{day} {begins[:5]} - {last} {ends[:5]}"


def _foot(check: Told) -> str:
    version = {"pack": check["pack"]["version"], "place": check["region"]["name"]}
    return "\n".join(
        [
            _("Knowledge: %(pack)s, %(place)s. Local rules and licensed practice come first.") % version,
            _("This check again: %(address)s") % {"address": check["check_again"]},
        ]
    )
