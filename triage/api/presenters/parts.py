"""The small parts that steps are made of, under the names the API keeps."""

from collections.abc import Iterable

from triage.check_pages.presenters.numbers import emergency_call
from triage.check_pages.view_models import FlagNote, Instruction, Number
from triage.check_pages.visit import Visit
from triage.engine import RedFlag

Told = dict[str, object]


def told_instructions(lines: Iterable[Instruction]) -> list[Told]:
    return [{"text": line.text, "parts": line.parts, "notes": line.notes} for line in lines]


def told_numbers(numbers: Iterable[Number]) -> list[Told]:
    return [_number(number) for number in numbers]


def told_emergency(visit: Visit) -> Told:
    return _number(emergency_call(visit.place))


def told_flag(visit: Visit, flag: RedFlag) -> Told:
    return {"flag": flag.id, "level": flag.level.value, "heading": visit.texts.flags[flag.id].heading}


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
