"""A hand-over form as it was sent: what was typed, the photo, and what could not be read. Never raises.

Whether a telephone number is one is decided where a job sheet is written, so that every way in is judged alike.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta

from django.core.exceptions import SuspiciousOperation
from django.http import HttpRequest, UnreadablePostError
from django.http.multipartparser import MultiPartParserError
from django.utils import timezone
from django.utils.translation import gettext as _

from triage.jobsheet.booking import Booking, Window
from triage.jobsheet.errors import FieldProblem, Refused

TEXTS = (
    *("name", "telephone", "email", "street", "postcode", "access"),
    *("maker", "model", "serial", "power", "year"),
)
AGREED, STATE, PHOTO = "agreed", "state", "photo"
DAYS = 3
PARTS = {
    "any": (time(8), time(18)),
    "morning": (time(8), time(12)),
    "afternoon": (time(12), time(17)),
    "evening": (time(17), time(20)),
}
MOST_BYTES = 30_000_000  # a form with a photo too large to take is still read, and told so


@dataclass(frozen=True)
class Sent:
    """`typed` holds every field by name, as it was typed; `problems` what could not even be read."""

    typed: Mapping[str, str]
    photo: bytes | None = None
    problems: list[FieldProblem] = field(default_factory=list)

    def booking(self, consent: str) -> Booking:
        """What was sent, `consent` being the words on the page. Refused where a time at home cannot be read."""
        told = {name: self.typed.get(name, "") for name in TEXTS}
        agreed = consent if self.typed.get(AGREED) else ""
        return Booking(**told, consent=agreed, windows=tuple(_windows(self.typed)), photo=self.photo)


def read_sent(request: HttpRequest) -> Sent:
    if _length_of(request) > MOST_BYTES:
        return Sent({}, problems=[_too_large()])
    try:
        typed = {name: str(value) for name, value in request.POST.items()}
        file = request.FILES.get(PHOTO)
        return Sent(typed, file.read() if file else None)
    except SuspiciousOperation:
        return Sent({}, problems=[_too_large()])
    except (MultiPartParserError, UnreadablePostError):
        return Sent(
            {}, problems=[FieldProblem(STATE, _("The form did not arrive whole. Fill it in and send it again."))]
        )


def _length_of(request: HttpRequest) -> int:
    told = request.META.get("CONTENT_LENGTH") or "0"
    return int(told) if told.isdecimal() else 0


def _too_large() -> FieldProblem:
    sentence = _("This is more than the form can take, and nothing of it was kept. Send it again with a smaller photo.")
    return FieldProblem(STATE, sentence)


def _windows(typed: Mapping[str, str]) -> Iterator[Window]:
    for number in range(1, DAYS + 1):
        told = typed.get(f"day-{number}", "").strip()
        if told:
            day = _day(told)
            start, end = PARTS.get(typed.get(f"part-{number}", ""), PARTS["any"])
            yield Window(datetime.combine(day, start), datetime.combine(day, end))


def _day(told: str) -> date:
    try:
        day = date.fromisoformat(told)
    except ValueError:
        raise Refused([FieldProblem("windows", _("This is not a day. Write it as in 2031-05-26."))]) from None
    # It may still be yesterday where the oven stands.
    if day < timezone.now().date() - timedelta(days=1):
        raise Refused([FieldProblem("windows", _("This day is over. Pick another one, or leave it empty."))])
    return day
