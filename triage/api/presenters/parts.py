"""The small parts that steps are made of, under the names the API keeps."""

from collections.abc import Iterable

from triage.check_pages.presenters.flags import FlagNote
from triage.check_pages.presenters.isolation import Instruction, instruction_notes, instruction_text
from triage.check_pages.presenters.phone_numbers import PhoneNumber, emergency_call
from triage.check_pages.request import CheckRequest
from triage.engine import RedFlag
from triage.jobsheet.sentences import sentence

Json = dict[str, object]


def instructions_json(lines: Iterable[Instruction]) -> list[Json]:
    return [
        {"text": instruction_text(line), "parts": list(line.parts), "notes": instruction_notes(line)} for line in lines
    ]


def phone_numbers_json(numbers: Iterable[PhoneNumber]) -> list[Json]:
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
        "steps": instructions_json(note.steps),
        "do_not": note.prohibitions,
    }


def _phone_number_json(number: PhoneNumber) -> Json:
    return {"number": number.number, "for": sentence("phone_number", number=number), "href": number.href}
