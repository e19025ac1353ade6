"""The small parts that steps are made of, under the names the API keeps."""

from collections.abc import Iterable

from triage.check_pages.presenters.numbers import emergency_call
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import FlagNote, Instruction, Number
from triage.engine import RedFlag

Told = dict[str, object]


def told_instructions(lines: Iterable[Instruction]) -> list[Told]:
    return [{"text": line.text, "parts": line.parts, "notes": line.notes} for line in lines]


def told_numbers(numbers: Iterable[Number]) -> list[Told]:
    return [_number(number) for number in numbers]


def told_emergency(check_request: CheckRequest) -> Told:
    return _number(emergency_call(check_request.region))


def told_flag(check_request: CheckRequest, flag: RedFlag) -> Told:
    return {"flag": flag.id, "level": flag.level.value, "heading": check_request.texts.flags[flag.id].heading}


def told_note(note: FlagNote) -> Told:
    return {
        "signal": note.signal,
        "heading": note.heading,
        "hazard": note.hazard,
        "first": told_instructions(note.first),
        "never": note.never,
    }


def _number(number: Number) -> Told:
    return {"number": number.number, "for": number.for_what, "href": number.href}
