"""The hand-over as an agent fills it in: every question in the words to say, and the consent to read out."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from django.urls import reverse
from django.utils.translation import gettext as _

from triage.check_pages.hand_over_form import AGREED, Sent
from triage.check_pages.presenters.hand_over_fields import Day, Field, Words, Wrong, days, fields
from triage.desk.call.booking import NOTES, READ_PREFIX, for_agent, was_read
from triage.desk.call.open_call import Call
from triage.desk.call.presenters.alarm import alarm_of
from triage.desk.call.speech import line_id
from triage.desk.call.view_models import Alarm
from triage.engine import SCREEN
from triage.jobsheet.consent import spoken_consent
from triage.jobsheet.errors import FieldProblem

FIELD_IDS = {"consent": AGREED, "windows": "day-1"}


@dataclass(frozen=True)
class ConsentLine:
    """One sentence of the consent; `name` is that of its tick."""

    name: str
    text: str
    read: bool


@dataclass(frozen=True)
class CallBookingPage:
    """`call_id` is the name under which the browser keeps what was typed."""

    action: str
    state: str
    alarm: Alarm | None
    wrong: list[Wrong]
    who: list[Field]
    where: list[Field]
    plate: list[Field]
    days: list[Day]
    days_problem: str
    consent: list[ConsentLine]
    agreed: bool
    consent_problem: str
    notes: str
    notes_problem: str
    back_href: str
    danger_href: str
    call_id: str


def booking_page(call: Call, sent: Sent, state: str, problems: Sequence[FieldProblem]) -> CallBookingPage:
    problems = [for_agent(problem) for problem in problems]
    errors_by_field = {problem.field: problem.message for problem in reversed(problems)}
    query = call.links.current_query()
    return CallBookingPage(
        action=f"{reverse('desk-call-booking')}?{query}",
        state=state,
        alarm=alarm_of(call),
        wrong=list(_wrong(problems)),
        who=fields(_who_words(), sent, errors_by_field),
        where=fields(_where_words(), sent, errors_by_field),
        plate=fields(_plate_words(), sent, errors_by_field),
        days=days(sent),
        days_problem=errors_by_field.get("windows", ""),
        consent=[
            ConsentLine(READ_PREFIX + line_id(line), line, was_read(sent, line)) for line in spoken_consent(call.firm)
        ],
        agreed=bool(sent.typed.get(AGREED)),
        consent_problem=errors_by_field.get("consent", ""),
        notes=sent.typed.get(NOTES, ""),
        notes_problem=errors_by_field.get(NOTES, ""),
        back_href=call.links.current(),
        danger_href=call.links.without(SCREEN, ask=SCREEN),
        call_id=call.state.id,
    )


def _wrong(problems: Iterable[FieldProblem]) -> Iterable[Wrong]:
    known = {name for name, *_rest in (*_who_words(), *_where_words(), *_plate_words())} | {AGREED, NOTES, "day-1"}
    for problem in problems:
        name = FIELD_IDS.get(problem.field, problem.field)
        yield Wrong(problem.message, f"#{name}" if name in known else "")


def _who_words() -> tuple[Words, ...]:
    return (
        ("name", _("What name may the repairer ask for?"), "text", "off", ""),
        ("telephone", _("On which number can we call you?"), "tel", "off", ""),
        ("email", _("Is there an e-mail address too?"), "email", "off", ""),
    )


def _where_words() -> tuple[Words, ...]:
    return (
        ("street", _("Where is the oven: house number and street?"), "text", "off", ""),
        ("postcode", _("And the postcode?"), "text", "off", ""),
        (
            "access",
            _("Is there anything to know for getting in: a floor, parking, a dog, the bell?"),
            "lines",
            "off",
            "",
        ),
    )


def _plate_words() -> tuple[Words, ...]:
    return (
        ("maker", _("Maker"), "text", "off", ""),
        ("model", _("Model"), "text", "off", ""),
        ("serial", _("Serial number"), "text", "off", ""),
        ("power", _("Rated power"), "text", "off", ""),
        ("year", _("Year bought"), "text", "off", ""),
    )
