"""The parts have the names the API keeps."""

from tests.api.presenters.steps import check_request, validator
from triage.api.presenters.parts import (
    emergency_number_json,
    flag_json,
    instructions_json,
    note_json,
    phone_numbers_json,
)
from triage.check_pages.presenters.flags import FlagNote
from triage.check_pages.presenters.isolation import Instruction
from triage.check_pages.presenters.phone_numbers import PhoneNumber


def test_every_part_is_as_described():
    line = Instruction("", ("At the plug.",), "Leave it.", "The note.")
    note = FlagNote("WARNING", "Heading", "Hazard", [line], ["Never this."])
    flag = next(iter(check_request().pack.red_flags.values()))
    for name, item in {
        "instruction": instructions_json([line])[0],
        "note": note_json(note),
        "phone_number": phone_numbers_json([PhoneNumber("emergency", "112", "tel:112", "help")])[0],
        "flag": flag_json(check_request(), flag),
    }.items():
        validator(name).validate(item)
    assert instructions_json([line]) == [
        {"text": "Cut the power:", "parts": ["At the plug."], "notes": ["If you can’t do that: Leave it.", "The note."]}
    ]


def test_the_emergency_number_is_the_places():
    assert (
        emergency_number_json(check_request(region="ie"))["href"]
        == f"tel:{check_request(region='ie').region.emergency}"
    )
