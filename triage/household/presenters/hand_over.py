"""The hand-over form: whom to call, where, when, the rating plate, and what is agreed to. What was typed comes back."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from django.utils.translation import gettext as _

from triage.check_pages.hand_over_form import AGREED, PHOTO, Sent
from triage.check_pages.presenters.firm_words import firm_words
from triage.check_pages.presenters.hand_over_fields import Day, Field, Words, Wrong, days, fields
from triage.check_pages.request import CheckRequest
from triage.jobsheet.consent import consent_lines
from triage.jobsheet.errors import FieldProblem
from triage.models import Firm

UNNAMED = {"consent": AGREED, "windows": "day-1"}


@dataclass(frozen=True)
class HandOverPage:
    heading: str
    intro: str
    firm: str
    firm_says: list[tuple[str, str]]
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


def hand_over_page(
    check_request: CheckRequest, firm: Firm, sent: Sent, state: str, problems: Sequence[FieldProblem]
) -> HandOverPage:
    told = {problem.field: problem.message for problem in reversed(problems)}
    plate = fields(_plate_words(), sent, told)
    return HandOverPage(
        heading=_("Send this to %(firm)s") % {"firm": firm.name},
        intro=_("Your answers go along. Only what the repairer needs is asked, and you can erase it later."),
        firm=firm.name,
        firm_says=firm_words(firm),
        action=check_request.links.hand_over(),
        state=state,
        wrong=_wrong(problems, {field.name for field in plate}),
        who=fields(_who_words(), sent, told),
        where=fields(_where_words(), sent, told),
        plate=plate,
        plate_open=PHOTO in told or any(field.value or field.problem for field in plate),
        photo_problem=told.get(PHOTO, ""),
        days=days(sent),
        days_problem=told.get("windows", ""),
        consent=consent_lines(firm),
        agreed=bool(sent.typed.get(AGREED)),
        consent_problem=told.get("consent", ""),
        back_href=check_request.links.step(),
    )


def _wrong(problems: Iterable[FieldProblem], plate: set[str]) -> list[Wrong]:
    known = {name for name, *_ in (*_who_words(), *_where_words())} | plate | {PHOTO, AGREED, "day-1"}
    found = []
    for problem in problems:
        name = UNNAMED.get(problem.field, problem.field)
        found.append(Wrong(problem.message, f"#{name}" if name in known else ""))
    return found


def _who_words() -> tuple[Words, ...]:
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
