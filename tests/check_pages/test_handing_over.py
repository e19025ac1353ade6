"""A visit is for whom it helps: never where people have to leave, and never where nobody of the firm is needed."""

import pytest

from tests.household.checks_done import answers_of, at
from tests.household.every_page import PAGES
from triage.check_pages.handing_over import may_hand_over
from triage.check_pages.request import read_check_request

HANDED_OVER = {"advice", "advice with a caution", "make safe"}
KEPT = {"gas", "put right", "question", "not electric"}


@pytest.mark.parametrize("name", sorted(HANDED_OVER | KEPT))
def test_which_checks_may_be_handed_over(rf, name):
    assert may_hand_over(read_check_request(rf.get(PAGES[name]))) == (name in HANDED_OVER)


def test_where_it_works_as_it_should_nobody_needs_to_come(rf):
    check_request = read_check_request(rf.get(at("/check/", answers_of("normal-fan-run-on", "fan-after"))))
    assert check_request.step.verdict.band.value == "normal"
    assert not may_hand_over(check_request)


def test_where_the_network_has_to_come_the_firm_is_not_sent(rf):
    check_request = read_check_request(rf.get(at("/check/", answers_of("neutral-fault", "house"))))
    leading = check_request.pack.faults[check_request.step.verdict.causes[0].fault]
    assert leading.performed_by == "network-operator"
    assert not may_hand_over(check_request)
