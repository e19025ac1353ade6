"""The hand-over form: whom to call, where, when, the rating plate, and what is agreed to. What was typed comes back."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from django.utils.translation import gettext as _

from triage.check_pages.visit import Visit
from triage.household.hand_over_form import AGREED, DAYS, PARTS, PHOTO, STATE, Sent
from triage.jobsheet.booking import LONGEST
from triage.jobsheet.consent import consent_lines
from triage.jobsheet.errors import Problem
from triage.models import Firm

UNNAMED = {"consent": AGREED, "windows": "day-1"}


@dataclass(frozen=True)
class Field:
    """One thing to type. `kind` is that of the keyboard wanted, or `lines` for several lines; `fill` what the browser
    may fill in by itself."""

    name: str
    label: str
    value: str
    problem: str
    kind: str = "text"
    fill: str = "off"
    hint: str = ""
    longest: int = 0


@dataclass(frozen=True)
class PartOfDay:
    value: str
    words: str
    chosen: bool


@dataclass(frozen=True)
class Day:
    name: str
    part_name: str
    number: int
    value: str
    parts: list[PartOfDay]


@dataclass(frozen=True)
class Wrong:
    """A problem in the list above the form; `href` leads to its field where it has one."""

    sentence: str
    href: str


@dataclass(frozen=True)
class HandOverPage:
    heading: str
    intro: str
    firm: str
    action: str
    state: str
    wrong: list[Wrong]
    who: list[Field]
    where: list[Field]
    plate: list[Field]
    plate_open: bool
    photo_problem: str
    days: list[Day]
    days_problem: str
    consent: list[str]
    agreed: bool
    consent_problem: str
    back_href: str


def hand_over_page(visit: Visit, firm: Firm, sent: Sent, state: str, problems: Sequence[Problem]) -> HandOverPage:
    told = {problem.field: problem.sentence for problem in reversed(problems)}
    plate = _fields(_plate_words(), sent, told)
    return HandOverPage(
        heading=_("Send this to %(firm)s") % {"firm": firm.name},
        intro=_("Your answers go along. Only what the repairer needs is asked, and you can erase it later."),
        firm=firm.name,
        action=visit.links.hand_over(),
        state=state,
        wrong=_wrong(problems, {field.name for field in plate}),
        who=_fields(_who_words(), sent, told),
        where=_fields(_where_words(), sent, told),
        plate=plate,
        plate_open=PHOTO in told or any(field.value or field.problem for field in plate),
        photo_problem=told.get(PHOTO, ""),
        days=_days(sent),
        days_problem=told.get("windows", ""),
        consent=consent_lines(firm),
        agreed=bool(sent.typed.get(AGREED)),
        consent_problem=told.get("consent", ""),
        back_href=visit.links.step(),
    )


def _wrong(problems: Iterable[Problem], plate: set[str]) -> list[Wrong]:
    known = {name for name, *_ in (*_who_words(), *_where_words())} | plate | {PHOTO, AGREED, "day-1"}
    found = []
    for problem in problems:
        name = UNNAMED.get(problem.field, problem.field)
        found.append(Wrong(problem.sentence, f"#{name}" if name in known else ""))
    return found


Words = tuple[str, str, str, str, str]


def _who_words() -> tuple[Words, ...]:
    """Name, label, kind, what the browser may fill in, and a hint."""
    return (
        ("name", _("Your name"), "text", "name", ""),
        ("telephone", _("Telephone"), "tel", "tel", _("A telephone number or an e-mail address is enough.")),
        ("email", _("E-mail"), "email", "email", ""),
    )


def _where_words() -> tuple[Words, ...]:
    return (
        ("street", _("House and street"), "text", "street-address", ""),
        ("postcode", _("Postcode"), "text", "postal-code", ""),
        ("access", _("Getting in"), "lines", "off", _("Floor, parking, a dog, a broken bell.")),
    )


def _plate_words() -> tuple[Words, ...]:
    return (
        ("maker", _("Maker"), "text", "off", ""),
        ("model", _("Model"), "text", "off", ""),
        ("serial", _("Serial number"), "text", "off", ""),
        ("power", _("Rated power"), "text", "off", _("As printed, such as 2.9 kW.")),
        ("year", _("Year bought"), "text", "off", ""),
    )


def _fields(words: Iterable[Words], sent: Sent, told: dict[str, str]) -> list[Field]:
    return [
        Field(name, label, sent.typed.get(name, ""), told.get(name, ""), kind, fill, hint, LONGEST[name])
        for name, label, kind, fill, hint in words
    ]


def _days(sent: Sent) -> list[Day]:
    words = {
        "any": _("8:00 to 18:00"),
        "morning": _("8:00 to 12:00"),
        "afternoon": _("12:00 to 17:00"),
        "evening": _("17:00 to 20:00"),
    }
    days = []
    for number in range(1, DAYS + 1):
        chosen = sent.typed.get(f"part-{number}", "any")
        parts = [PartOfDay(part, words[part], part == chosen) for part in PARTS]
        days.append(Day(f"day-{number}", f"part-{number}", number, sent.typed.get(f"day-{number}", ""), parts))
    return days


def stale_problem() -> Problem:
    sentence = _("This form was open for more than a day, so nothing was sent. Look through it and send it again.")
    return Problem(STATE, sentence)
