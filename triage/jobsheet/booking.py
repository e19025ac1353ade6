"""What a person gives beside the answers: whom to call, where, when, the rating plate, and that they agree.

`check_booking` returns it cleaned, or raises Refused with every problem at once.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from django.core.exceptions import ValidationError
from django.core.validators import validate_email
from django.utils.translation import gettext as _

from triage.jobsheet.errors import FieldProblem, Refused
from triage.jobsheet.plain_text import clean_line, clean_text

MAX_WINDOWS = 10
MIN_DIGITS = 5
TELEPHONE = re.compile(r"\+?[0-9 ()./-]{5,40}")

MAX_LENGTHS = {
    "name": 120,
    "telephone": 40,
    "email": 254,
    "street": 300,
    "postcode": 20,
    "access": 2000,
    "maker": 80,
    "model": 80,
    "serial": 80,
    "power": 40,
    "year": 10,
    "consent": 2000,
}
SEVERAL_LINES = {"access", "consent"}


@dataclass(frozen=True, slots=True)
class Window:
    """When somebody is at home, in the oven's local time: no zone, because it is the same wall clock for both."""

    start: datetime
    end: datetime


@dataclass(frozen=True, slots=True)
class Booking:
    """`consent` are the words the person agreed to, as they stood on the page. `photo` is a picture file of the
    rating plate as it was sent; the rest of the plate is as typed."""

    name: str
    consent: str
    telephone: str = ""
    email: str = ""
    street: str = ""
    postcode: str = ""
    access: str = ""
    maker: str = ""
    model: str = ""
    serial: str = ""
    power: str = ""
    year: str = ""
    windows: tuple[Window, ...] = ()
    photo: bytes | None = None


def check_booking(booking: Booking) -> Booking:
    cleaned: dict[str, Any] = {
        name: (clean_text if name in SEVERAL_LINES else clean_line)(getattr(booking, name)) for name in MAX_LENGTHS
    }
    checked = replace(booking, **cleaned)
    problems = [*_lengths(checked), *_who(checked), *_when(checked)]
    if problems:
        raise Refused(problems)
    return checked


def _lengths(booking: Booking) -> Iterator[FieldProblem]:
    for name, most in MAX_LENGTHS.items():
        length = len(getattr(booking, name))
        if length > most:
            params = {"length": length, "most": most}
            yield FieldProblem(
                name, _("This has %(length)s characters, and %(most)s are the most. Shorten it.") % params
            )


def _who(booking: Booking) -> Iterator[FieldProblem]:
    if not booking.name:
        yield FieldProblem("name", _("Give a name the repairer can ask for."))
    if not booking.consent:
        yield FieldProblem("consent", _("The repairer may only be told once you agree to it."))
    if not booking.telephone and not booking.email:
        yield FieldProblem("telephone", _("Give a telephone number or an e-mail address, so that the firm can answer."))
    if booking.telephone and not _can_be_dialled(booking.telephone):
        yield FieldProblem("telephone", _("This is not a telephone number. Write digits, as in 020 7946 0000."))
    if booking.email and not _is_email(booking.email):
        yield FieldProblem("email", _("This is not an e-mail address. Write it as in name@example.org."))


def _can_be_dialled(telephone: str) -> bool:
    digits = sum(sign.isdigit() for sign in telephone)
    return TELEPHONE.fullmatch(telephone) is not None and digits >= MIN_DIGITS


def _is_email(email: str) -> bool:
    try:
        validate_email(email)
    except ValidationError:
        return False
    return True


def _when(booking: Booking) -> Iterator[FieldProblem]:
    if len(booking.windows) > MAX_WINDOWS:
        yield FieldProblem("windows", _("Give at most %(most)s times.") % {"most": MAX_WINDOWS})
    if any(window.start.tzinfo or window.end.tzinfo for window in booking.windows):
        yield FieldProblem("windows", _("Give times as the clock on the wall shows them, without a time zone."))
    elif any(window.end <= window.start for window in booking.windows):
        yield FieldProblem("windows", _("A time at home has to end after it begins."))
