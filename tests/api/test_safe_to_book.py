"""No repair is booked while people have to get out."""

import pytest

from tests.firm_builders import TRAIL
from triage.api.safe_to_book import leave_first
from triage.jobsheet.errors import Refused
from triage.knowledge.library import library

LEAVE = [
    (name, answer)
    for name, asked in library().pack.observations.items()
    for answer, flag in asked.flags.items()
    if flag in ("gas-smell", "co-alarm")
]


@pytest.mark.parametrize("sign", LEAVE)
def test_people_who_have_to_leave_are_told_so(sign):
    with pytest.raises(Refused, match="people have to get out now and call for help from outside"):
        leave_first((*TRAIL, sign))


@pytest.mark.parametrize("trail", [TRAIL, (), (("no-such", "thing"),), (*TRAIL, ("smell-type", "plastic-or-fishy"))])
def test_any_other_check_may_be_booked(trail):
    assert leave_first(trail) is None
