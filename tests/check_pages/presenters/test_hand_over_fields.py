"""Fields and days of a hand-over form: what was typed comes back, and what is wrong stands beside it."""

from triage.check_pages.hand_over_form import DAYS, PARTS, Sent
from triage.check_pages.presenters.hand_over_fields import days, fields
from triage.jobsheet.booking import MAX_LENGTHS

WORDS = [("name", "Your name", "text", "name", ""), ("access", "Getting in", "lines", "off", "A broken bell.")]


def test_a_field_has_what_was_typed_what_is_wrong_and_how_long_it_may_be():
    name, access = fields(WORDS, Sent({"name": "Alex"}), {"access": "Shorten it."})
    assert (name.value, name.problem, name.longest) == ("Alex", "", MAX_LENGTHS["name"])
    assert (access.kind, access.value, access.problem, access.hint) == ("lines", "", "Shorten it.", "A broken bell.")


def test_each_day_has_its_part_chosen():
    found = days(Sent({"day-2": "2031-05-26", "part-2": "evening", "part-3": "no-such-part"}))
    assert [day.number for day in found] == list(range(1, DAYS + 1))
    assert [day.value for day in found] == ["", "2031-05-26", ""]
    chosen = [[part.value for part in day.parts if part.chosen] for day in found]
    assert chosen == [["any"], ["evening"], []]
    assert [part.value for part in found[0].parts] == list(PARTS)
