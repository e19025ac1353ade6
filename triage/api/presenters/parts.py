"""The small parts that steps are made of, under the names the API keeps."""

from collections.abc import Iterable

from triage.check_pages.presenters.numbers import emergency_call
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import FlagNote, Instruction, Number
from triage.engine import RedFlag

Json = dict[str, object]


def instructions_json(lines: Iterable[Instruction]) -> list[Json]:
    return [{"text": line.text, "parts": line.parts, "notes": line.notes} for line in lines]


def phone_numbers_json(numbers: Iterable[Number]) -> list[Json]:
    return [_phone_number_json(number) for number in numbers]


def emergency_number_json(check_request: CheckRequest) -> Json:
    return _phone_number_json(emergency_call(check_request.region))


def flag_json(check_request: CheckRequest, flag: RedFlag) -> Json:
    return {"flag": flag.id, "level": flag.level.value, "heading": check_request.texts.flags[flag.id].heading}


def note_json(note: FlagNote) -> Json:
    return {
        "signal": note.signal,
        "heading": note.heading,
        "hazard": note.hazard,
        "steps": instructions_json(note.first),
        "do_not": note.never,
    }


def _phone_number_json(number: Number) -> Json:
    return {"number": number.number, "for": number.for_what, "href": number.href}
