"""A call becomes one job sheet of the agent's firm, with its notes, and never without the consent as it was read."""

import pytest

from tests.desk.call.filled_in import filled_in
from tests.desk.call.reading_aloud import ELEMENT, query_of, told_and_read
from tests.firm_builders import make_firm, make_member
from triage.check_pages.hand_over_form import Sent
from triage.desk.call.booking import agreed_text, already_booked, book, for_agent, is_ready
from triage.jobsheet.consent import spoken_consent
from triage.jobsheet.errors import FieldProblem, IdempotencyConflict, Refused
from triage.models import JobSheet
from triage.models.firm import Role
from triage.models.job_sheet import MAX_NOTE_LENGTH

KEY = "key-of-this-call"


@pytest.fixture
def agent(db):
    return make_member(make_firm(), Role.AGENT)


@pytest.fixture
def over(call, reopen, agent):
    return reopen(f"/desk/call/?{told_and_read(call, reopen)}", agent.firm)


@pytest.mark.parametrize(
    ("answers", "ready"),
    [
        (ELEMENT, True),
        ({"complaint": "smell", "smell-type": "plastic-or-fishy"}, True),
        ({"smoke-source": "flames"}, True),
        ({"complaint": "smell", "smell-type": "gas"}, False),
        ({"complaint": "will-not-light", "danger": "none", "oven-fuel": "gas"}, False),
    ],
)
def test_it_is_ready_once_everything_was_read_and_a_visit_is_the_next_thing(call, reopen, answers, ready):
    assert not is_ready(call(query_of(answers)))
    assert is_ready(reopen(f"/desk/call/?{told_and_read(call, reopen, answers)}")) is ready


def test_the_job_sheet_is_the_agents_with_all_that_was_said(over, agent):
    sheet = book(over, filled_in(agent.firm, notes="Rings back after lunch.\nHas a dog."), agent, KEY)
    assert (sheet.firm, sheet.taken_by, sheet.name) == (agent.firm, agent, "Alex Grey")
    assert dict(sheet.answers) == ELEMENT
    assert sheet.consent == " ".join(spoken_consent(agent.firm))
    assert [(window["start"][11:], window["end"][11:]) for window in sheet.windows] == [("08:00:00", "12:00:00")]
    assert [(note.text, note.author) for note in sheet.notes.all()] == [("Rings back after lunch.\nHas a dog.", agent)]


def test_sent_twice_it_is_one_job_sheet_with_one_note(over, agent):
    sheets = {book(over, filled_in(agent.firm, notes="Has a dog."), agent, KEY).pk for _ in range(2)}
    assert len(sheets) == 1
    assert JobSheet.objects.get().notes.count() == 1


def test_no_consent_without_every_sentence_of_it(agent):
    whole = filled_in(agent.firm)
    assert agreed_text(agent.firm, whole)
    for name in whole.typed:
        if name == "agreed" or name.startswith("read-"):
            left = {field: value for field, value in whole.typed.items() if field != name}
            assert agreed_text(agent.firm, Sent(left)) == ""


def test_without_consent_nothing_is_written(over, agent):
    with pytest.raises(Refused) as refused:
        book(over, filled_in(agent.firm, agreed=""), agent, KEY)
    assert for_agent(refused.value.problems[0]).message == (
        "Read every sentence of it out, tick each, and ask whether they agree. Without it nothing may be kept."
    )
    assert not JobSheet.objects.exists()


def test_a_note_that_cannot_be_taken_takes_the_job_sheet_back_too(over, agent):
    with pytest.raises(Refused) as refused:
        book(over, filled_in(agent.firm, notes="x" * (MAX_NOTE_LENGTH + 1)), agent, KEY)
    assert [problem.field for problem in refused.value.problems] == ["notes"]
    assert not JobSheet.objects.exists()


def test_with_other_details_the_job_sheet_of_before_is_named(over, agent):
    sheet = book(over, filled_in(agent.firm), agent, KEY)
    with pytest.raises(IdempotencyConflict):
        book(over, filled_in(agent.firm, name="Robin Grey"), agent, KEY)
    assert already_booked(over, KEY).message.startswith(
        f"This call already has a job sheet with other details: {sheet.reference}. Correct it there."
    )


def test_what_is_wrong_with_a_field_stays_as_it_is_said():
    assert for_agent(FieldProblem("name", "Give a name.")) == FieldProblem("name", "Give a name.")
