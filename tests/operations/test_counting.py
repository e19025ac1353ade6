"""A step counts once for each answer that was sent, kept page or not; what is no step does not."""

import pytest

from tests.household.every_page import PAGES
from triage.operations.step_counts import KINDS, counts_by_worker
from triage.web.step_header import STEP

QUESTION = PAGES["question"]


def counted(client, address, **headers):
    before = totals()
    response = client.get(address, headers=headers)
    return response, {slot: count - before[slot] for slot, count in totals().items() if count != before[slot]}


def totals():
    ((_worker, counts),) = counts_by_worker()
    return counts


def test_every_page_of_a_check_says_its_kind(client):
    kinds = {client.get(address).headers[STEP] for address in PAGES.values()}
    assert kinds <= set(KINDS) - {"other"}
    assert kinds >= {"start", "danger", "question", "make_safe", "advice", "task", "exit", "costs"}


def test_a_page_that_comes_from_the_shelf_counts_too(client):
    for _ in range(2):
        assert counted(client, QUESTION)[1] == {("page", "question"): 1}


def test_a_step_of_the_api_counts_by_itself(client):
    assert counted(client, QUESTION.replace("/check/", "/api/v1/step"))[1] == {("api", "question"): 1}


def test_what_is_no_step_or_was_not_sent_does_not_count(client):
    assert counted(client, "/no-such-page/")[1] == {}
    assert counted(client, "/health/")[1] == {}
    tag = client.get(QUESTION).headers["ETag"]
    response, more = counted(client, QUESTION, If_None_Match=tag)
    assert (response.status_code, more) == (304, {})


@pytest.mark.parametrize("address", ["/check/?complaint=%00", "/?region=atlantis"])
def test_a_broken_address_is_counted_by_the_page_it_got(client, address):
    response, more = counted(client, address)
    assert more == {("page", response.headers[STEP]): 1}
