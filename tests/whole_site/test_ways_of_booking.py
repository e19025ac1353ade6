"""One check, four ways to book a visit with it: whichever it takes, the job sheet says the same of it."""

import pytest

from tests.api import asking
from tests.desk.call import filled_in, reading_aloud
from tests.desk.call.conftest import SLUG, call, reopen  # noqa: F401  (fixtures)
from tests.desk.clients import client_of
from tests.firm_builders import make_firm, make_member
from tests.household.hand_overs import ELEMENT, TYPED, form_address, send, state_of
from triage.models import JobSheet

pytestmark = pytest.mark.django_db

NONSENSE = {"no-such-question": "yes", "lamp-state": "blue"}
ANSWERS = {**ELEMENT, **NONSENSE}


@pytest.fixture
def firm():
    return make_firm(slug=SLUG, origins=[asking.PAGE])


@pytest.fixture
def by_form(client, firm):
    return lambda: send(client, form_address(firm, ANSWERS))


@pytest.fixture
def by_queued_form(client, firm):
    there = form_address(firm, ANSWERS).replace("/hand-over/", "/hand-over/kept/")
    headers = {"Origin": "http://testserver", "Idempotency-Key": "0123456789abcdef" * 2}
    return lambda: client.post(there, TYPED, headers=headers)


@pytest.fixture
def by_call(firm, call, reopen):  # noqa: F811
    agent = client_of(make_member(firm))
    read = reading_aloud.told_and_read(call, reopen)
    there = f"/desk/call/hand-over/?{read}&{reading_aloud.query_of(NONSENSE)}"
    return lambda: agent.post(there, filled_in.fields_of(firm, state=state_of(agent, there)))


@pytest.fixture
def by_api(client, firm):
    body = asking.body_of(answers=[list(pair) for pair in ANSWERS.items()])
    return lambda: asking.send(client, firm, body, Origin=asking.PAGE)


@pytest.mark.parametrize("way", ["by_form", "by_queued_form", "by_call", "by_api"])
def test_answers_that_could_not_be_used_are_counted(request, way):
    response = request.getfixturevalue(way)()
    assert response.status_code in (200, 201, 302), response.content.decode()[:300]
    sheet = JobSheet.objects.get()
    assert dict(sheet.answers) == ELEMENT
    assert sheet.summary["ignored_answers"] == len(NONSENSE)
