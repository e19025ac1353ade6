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

from triage.jobsheet.booking import MAX_LENGTHS, MAX_WINDOWS, Booking, Window
from triage.jobsheet.errors import FieldProblem, Refused
from triage.jobsheet.photo import MAX_BYTES as MAX_PHOTO_BYTES
from triage.query import MAX_PAIRS, MAX_VALUE_LENGTH

REGION, ANSWERS, BOOKING, PHOTO, WINDOWS = "region", "answers", "booking", "photo", "windows"
MEMBERS = (REGION, ANSWERS, BOOKING, PHOTO)
OLD_ANSWERS = "trail"  # programs of firms that were written for the release of 2026-11 send the answers under this name
MAX_TEXT_LENGTH = 10_000
# Base64 makes four of three; the rest is for the texts.
MAX_BYTES = MAX_PHOTO_BYTES // 3 * 4 + 400_000
LOCAL_TIME = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}(:[0-9]{2})?")


@dataclass(frozen=True, slots=True)
class JobSheetRequest:
    """A job sheet as it was asked for."""

    region: str
    answers: tuple[tuple[str, str], ...]
    booking: Booking


def parse_job_sheet_request(body: object) -> JobSheetRequest:
    """What the body asks for. Raises Refused with every field that is of the wrong shape."""
    if not isinstance(body, dict):
        raise Refused([FieldProblem("", _("The body has to be one JSON object with a region, answers and a booking."))])
    if OLD_ANSWERS in body and ANSWERS not in body:
        body = {ANSWERS if name == OLD_ANSWERS else name: value for name, value in body.items()}
    problems = list(_problems(body))
    if problems:
        raise Refused(problems)
    booking = body[BOOKING]
    texts = {name: booking.get(name, "") for name in MAX_LENGTHS}
    windows = tuple(_window(window) for window in booking.get(WINDOWS, ()))
    photo = base64.b64decode(body[PHOTO]) if body.get(PHOTO) else None
    answers = tuple((question, answer) for question, answer in body[ANSWERS])
    return JobSheetRequest(body[REGION], answers, Booking(**texts, windows=windows, photo=photo))


def field_of(problem: FieldProblem) -> FieldProblem:
    """A problem found while writing the sheet, under the name its field has in the request."""
    inside = problem.field in MAX_LENGTHS or problem.field == WINDOWS
    names = {"idempotency_key": "Idempotency-Key"}
    return FieldProblem(
        f"{BOOKING}.{problem.field}" if inside else names.get(problem.field, problem.field), problem.message
    )


def _problems(body: Mapping[str, Any]) -> Iterator[FieldProblem]:
    yield from _unknown_fields("", body, MEMBERS)
    if not isinstance(body.get(REGION), str):
        yield FieldProblem(REGION, _("Give the place as a text, such as gb-eng."))
    if not _is_answers(body.get(ANSWERS)):
        params = {"most": MAX_PAIRS, "longest": MAX_VALUE_LENGTH}
        sentence = _(
            "Give the answers as a list of pairs of texts, in the order they were given: at most %(most)s pairs, and at"
            " most %(longest)s characters in each text."
        )
        yield FieldProblem(ANSWERS, sentence % params)
    if PHOTO in body and not _is_base64(body[PHOTO]):
        yield FieldProblem(
            PHOTO, _("Give the photo as a text in base64, without spaces and without anything before it.")
        )
    if isinstance(body.get(BOOKING), dict):
        yield from _booking_problems(body[BOOKING])
    else:
        yield FieldProblem(BOOKING, _("Give the booking as an object with a name, a way to answer and the consent."))


def _booking_problems(booking: Mapping[str, Any]) -> Iterator[FieldProblem]:
    yield from _unknown_fields(f"{BOOKING}.", booking, (*MAX_LENGTHS, WINDOWS))
    for name in MAX_LENGTHS:
        text = booking.get(name, "")
        if not isinstance(text, str):
            yield FieldProblem(f"{BOOKING}.{name}", _("This has to be a text."))
        elif len(text) > MAX_TEXT_LENGTH:
            yield FieldProblem(f"{BOOKING}.{name}", _("This is far too long. Shorten it."))
    windows = booking.get(WINDOWS, [])
    if not isinstance(windows, list) or len(windows) > MAX_WINDOWS or not all(map(_is_window, windows)):
        params = {"most": MAX_WINDOWS}
        sentence = _(
            "Give at most %(most)s times at home, each as an object with start and end, written as in"
            " 2031-05-26T09:00:00, as the clock on the wall shows it."
        )
        yield FieldProblem(f"{BOOKING}.{WINDOWS}", sentence % params)


def _unknown_fields(before: str, members: Mapping[str, Any], known: tuple[str, ...]) -> Iterator[FieldProblem]:
    """One problem for all fields that do not exist; what they are called is not repeated."""
    if set(members) - set(known):
        sentence = _("There is a field that we do not know. These are known: %(known)s.")
        yield FieldProblem(before.rstrip("."), sentence % {"known": ", ".join(known)})


def _is_answers(value: object) -> bool:
    return isinstance(value, list) and len(value) <= MAX_PAIRS and all(map(_is_pair, value))


def _is_pair(value: object) -> bool:
    if not isinstance(value, list) or len(value) != 2:
        return False
    return all(isinstance(text, str) and len(text) <= MAX_VALUE_LENGTH for text in value)


def _is_base64(value: object) -> bool:
    try:
        base64.b64decode(value if isinstance(value, str) else "?", validate=True)
    except (binascii.Error, ValueError):
        return False
    return True


def _is_window(value: object) -> bool:
    if not isinstance(value, dict) or set(value) != {"start", "end"}:
        return False
    return all(isinstance(time, str) and _is_local_time(time) for time in value.values())


def _is_local_time(value: str) -> bool:
    try:
        return LOCAL_TIME.fullmatch(value) is not None and bool(datetime.fromisoformat(value))
    except ValueError:
        return False


def _window(value: Mapping[str, str]) -> Window:
    return Window(datetime.fromisoformat(value["start"]), datetime.fromisoformat(value["end"]))
