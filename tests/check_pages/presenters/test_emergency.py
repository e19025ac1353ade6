"""A red flag: first action first, the right numbers, and nothing that its strictest rule forbids."""

import pytest

from tests.household.checks_done import address
from triage.check_pages.presenters.emergency import emergency_page
from triage.knowledge.library import library


def page_of(check_request, region="gb-eng", **answers):
    seen = check_request(address(region=region, **answers))
    return emergency_page(seen, seen.step)


def test_the_gravest_flag_gives_the_page_and_the_others_stand_below(check_request):
    page = page_of(check_request, burn_marks="plug-or-socket", smell_type="plastic-or-fishy")
    assert page.heading == "Leave the plug and the cable alone"
    assert page.steps[0].text == library().texts_for("gb-eng").flags["hot-plug"].first[0]
    assert [note.heading for note in page.other_flags] == ["Burning smell: switch off and leave off"]
    assert [number.href for number in page.phone_numbers] == ["tel:999"]


def test_causes_and_one_question_from_memory_are_for_the_repairer(check_request):
    page = page_of(check_request, complaint="smell", smell_type="plastic-or-fishy")
    assert page.causes
    assert page.follow_up is not None
    assert library().pack.observations["smell-place"].method == "memory"
    assert page.summary["red_flags"]


def test_people_who_have_to_leave_get_only_what_helps_them_out(check_request):
    page = page_of(check_request, complaint="smell", smell_type="gas", lamp_state="lamp-works", people="burnt")
    assert page.evacuate
    assert (page.causes, page.follow_up, page.summary, page.other_flags, page.problems) == ([], None, None, [], [])
    assert [answered.question for answered in page.answers] == ["Kind of smell"]
    assert len(page.mention) == 1


@pytest.mark.parametrize("region", ["gb-eng", "de", "us", "nl", "iec"])
def test_the_gas_line_is_shown_where_it_may_be_and_explained_where_not(check_request, region):
    place = library().regions[region]
    page = page_of(check_request, region, smell_type="gas")
    shown = [number.number for number in page.phone_numbers]
    assert place.emergency in shown
    assert (place.gas in shown) == bool(place.gas)
    assert any(contact.kind == "gas" for contact in page.other_contacts) != bool(place.gas)
