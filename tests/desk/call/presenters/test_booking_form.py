"""The form's page: questions to say, what was typed comes back, the consent sentence by sentence."""

import pytest

from tests.desk.call.filled_in import filled_in
from tests.desk.call.reading_aloud import told_and_read
from triage.check_pages.hand_over_form import Sent
from triage.desk.call.presenters.booking_form import booking_page
from triage.jobsheet.consent import spoken_consent
from triage.jobsheet.errors import FieldProblem


@pytest.fixture
def over(call, reopen):
    return reopen(f"/desk/call/?{told_and_read(call, reopen)}")


def test_it_carries_the_whole_call(over):
    page = booking_page(over, Sent({}), "state", [])
    assert page.action.startswith("/desk/call/hand-over/?region=gb-eng&complaint=no-heat")
    assert page.back_href.startswith("/desk/call/?region=gb-eng&complaint=no-heat")
    assert page.call_id == "ABCDE"
    assert page.alarm is None
    assert "danger=none" not in page.danger_href
    assert "call-ask=danger" in page.danger_href


def test_what_was_typed_and_ticked_comes_back(over):
    page = booking_page(over, filled_in(over.firm, notes="Has a dog."), "state", [])
    assert [field.value for field in page.who] == ["Alex Grey", "020 7946 0000", ""]
    assert [line.text for line in page.consent] == spoken_consent(over.firm)
    assert all(line.read for line in page.consent)
    assert (page.agreed, page.notes) == (True, "Has a dog.")
    untouched = booking_page(over, Sent({}), "state", [])
    assert not any(line.read for line in untouched.consent)


@pytest.mark.parametrize(
    ("field", "href"),
    [("telephone", "#telephone"), ("consent", "#agreed"), ("windows", "#day-1"), ("notes", "#notes"), ("state", "")],
)
def test_a_problem_leads_to_its_field(over, field, href):
    (wrong,) = booking_page(over, Sent({}), "state", [FieldProblem(field, "Say it again.")]).wrong
    assert wrong.href == href
    assert wrong.sentence.startswith("Read every sentence" if field == "consent" else "Say it again.")


def test_each_question_is_one_to_say(over):
    page = booking_page(over, Sent({}), "state", [])
    assert all(field.label.endswith("?") for field in [*page.who, *page.where])
