"""The body that asks for a job sheet, from whatever JSON was sent: every problem of its shape at once.

Whether a telephone number is one is decided where the sheet is written, so that every way in is judged alike.
"""

import base64
import binascii
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from django.utils.translation import gettext as _

from triage.check_pages.query import MAX_PAIRS, MAX_VALUE_LENGTH
from triage.jobsheet.booking import MAX_LENGTHS, MAX_WINDOWS, Booking, Window
from triage.jobsheet.errors import FieldProblem, Refused
from triage.jobsheet.photo import MOST_BYTES as LARGEST_PHOTO

REGION, TRAIL, BOOKING, PHOTO, WINDOWS = "region", "trail", "booking", "photo", "windows"
MEMBERS = (REGION, TRAIL, BOOKING, PHOTO)
LONGEST_TEXT = 10_000
# Base64 makes four of three; the rest is for the texts.
MOST_BYTES = LARGEST_PHOTO // 3 * 4 + 400_000
LOCAL_TIME = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}(:[0-9]{2})?")


@dataclass(frozen=True, slots=True)
class Wanted:
    """A job sheet as it was asked for."""

    region: str
    trail: tuple[tuple[str, str], ...]
    booking: Booking


def read_wanted(told: object) -> Wanted:
    """What the body asks for. Raises Refused with every field that is of the wrong shape."""
    if not isinstance(told, dict):
        raise Refused([FieldProblem("", _("The body has to be one JSON object with a region, a trail and a booking."))])
    problems = list(_problems(told))
    if problems:
        raise Refused(problems)
    booking = told[BOOKING]
    texts = {name: booking.get(name, "") for name in MAX_LENGTHS}
    windows = tuple(_window(window) for window in booking.get(WINDOWS, ()))
    photo = base64.b64decode(told[PHOTO]) if told.get(PHOTO) else None
    trail = tuple((question, answer) for question, answer in told[TRAIL])
    return Wanted(told[REGION], trail, Booking(**texts, windows=windows, photo=photo))


def field_of(problem: FieldProblem) -> FieldProblem:
    """A problem found while writing the sheet, under the name its field has in the request."""
    inside = problem.field in MAX_LENGTHS or problem.field == WINDOWS
    names = {"idempotency_key": "Idempotency-Key"}
    return FieldProblem(
        f"{BOOKING}.{problem.field}" if inside else names.get(problem.field, problem.field), problem.message
    )


def _problems(told: Mapping[str, Any]) -> Iterator[FieldProblem]:
    yield from _strangers("", told, MEMBERS)
    if not isinstance(told.get(REGION), str):
        yield FieldProblem(REGION, _("Give the place as a text, such as gb-eng."))
    if not _is_trail(told.get(TRAIL)):
        words = {"most": MAX_PAIRS, "longest": MAX_VALUE_LENGTH}
        sentence = _(
            "Give the answers as a list of pairs of texts, in the order they were given: at most %(most)s pairs, and at"
            " most %(longest)s signs in each text."
        )
        yield FieldProblem(TRAIL, sentence % words)
    if PHOTO in told and not _is_base64(told[PHOTO]):
        yield FieldProblem(
            PHOTO, _("Give the photo as a text in base64, without spaces and without anything before it.")
        )
    if isinstance(told.get(BOOKING), dict):
        yield from _booking_problems(told[BOOKING])
    else:
        yield FieldProblem(BOOKING, _("Give the booking as an object with a name, a way to answer and the consent."))


def _booking_problems(booking: Mapping[str, Any]) -> Iterator[FieldProblem]:
    yield from _strangers(f"{BOOKING}.", booking, (*MAX_LENGTHS, WINDOWS))
    for name in MAX_LENGTHS:
        told = booking.get(name, "")
        if not isinstance(told, str):
            yield FieldProblem(f"{BOOKING}.{name}", _("This has to be a text."))
        elif len(told) > LONGEST_TEXT:
            yield FieldProblem(f"{BOOKING}.{name}", _("This is far too long. Shorten it."))
    windows = booking.get(WINDOWS, [])
    if not isinstance(windows, list) or len(windows) > MAX_WINDOWS or not all(map(_is_window, windows)):
        words = {"most": MAX_WINDOWS}
        sentence = _(
            "Give at most %(most)s times at home, each as an object with start and end, written as in"
            " 2031-05-26T09:00:00, as the clock on the wall shows it."
        )
        yield FieldProblem(f"{BOOKING}.{WINDOWS}", sentence % words)


def _strangers(before: str, told: Mapping[str, Any], known: tuple[str, ...]) -> Iterator[FieldProblem]:
    """One problem for all fields that do not exist; what they are called is not repeated."""
    if set(told) - set(known):
        sentence = _("There is a field that we do not know. These are known: %(known)s.")
        yield FieldProblem(before.rstrip("."), sentence % {"known": ", ".join(known)})


def _is_trail(told: object) -> bool:
    return isinstance(told, list) and len(told) <= MAX_PAIRS and all(map(_is_pair, told))


def _is_pair(told: object) -> bool:
    if not isinstance(told, list) or len(told) != 2:
        return False
    return all(isinstance(text, str) and len(text) <= MAX_VALUE_LENGTH for text in told)


def _is_base64(told: object) -> bool:
    try:
        base64.b64decode(told if isinstance(told, str) else "?", validate=True)
    except (binascii.Error, ValueError):
        return False
    return True


def _is_window(told: object) -> bool:
    if not isinstance(told, dict) or set(told) != {"start", "end"}:
        return False
    return all(isinstance(time, str) and _is_local_time(time) for time in told.values())


def _is_local_time(told: str) -> bool:
    try:
        return LOCAL_TIME.fullmatch(told) is not None and bool(datetime.fromisoformat(told))
    except ValueError:
        return False


def _window(told: Mapping[str, str]) -> Window:
    return Window(datetime.fromisoformat(told["start"]), datetime.fromisoformat(told["end"]))
