"""The parts have the names the API keeps."""

from tests.api.presenters.steps import check_request, validator
from triage.api.presenters.parts import told_emergency, told_flag, told_instructions, told_note, told_numbers
from triage.check_pages.view_models import FlagNote, Instruction, Number


def test_every_part_is_as_described():
    line = Instruction("Cut the power:", ["At the plug."], ["If you can’t, leave it."])
    note = FlagNote("WARNING", "Heading", "Hazard", [line], ["Never this."])
    flag = next(iter(check_request().pack.red_flags.values()))
    for name, told in {
        "instruction": told_instructions([line])[0],
        "note": told_note(note),
        "number": told_numbers([Number("112", "Help", "tel:112")])[0],
        "flag": told_flag(check_request(), flag),
    }.items():
        validator(name).validate(told)
    assert told_instructions([line]) == [
        {"text": "Cut the power:", "parts": ["At the plug."], "notes": ["If you can’t, leave it."]}
    ]


def test_the_emergency_number_is_the_places():
    assert told_emergency(check_request(region="ie"))["href"] == f"tel:{check_request(region='ie').region.emergency}"
