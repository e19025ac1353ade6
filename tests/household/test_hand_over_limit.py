"""The limit is a setting, its words say how long to wait, and it counts a network and not a visitor."""

from datetime import timedelta

import pytest
from django.utils import timezone

from triage.household.hand_over_limit import SECONDS, count_hand_over, wait_problem
from triage.models import RequestCount
from triage.web.rate_limit import Allowance, Policy

pytestmark = pytest.mark.django_db


def test_so_many_as_the_site_says(rf, settings):
    settings.TRIAGE_BOOKING_RATE_LIMIT = "3"
    assert [count_hand_over(rf.post("/")).exceeded for _ in range(4)] == [False, False, False, True]
    assert not count_hand_over(rf.post("/", REMOTE_ADDR="192.0.2.9")).exceeded


def test_it_is_forgotten_when_its_stretch_is_over(rf):
    count_hand_over(rf.post("/"))
    kept = RequestCount.objects.get()
    assert timezone.now() < kept.ends <= timezone.now() + timedelta(seconds=SECONDS)
    assert "127.0.0.1" not in kept.bucket


@pytest.mark.parametrize(
    ("seconds", "minutes"), [(1, "1 minute"), (60, "1 minute"), (61, "2 minutes"), (600, "10 minutes")]
)
def test_the_wait_is_told_in_whole_minutes_and_never_too_short(seconds, minutes):
    told = wait_problem(Allowance(Policy("hand-over", 1, SECONDS), 0, seconds, exceeded=True)).message
    assert f"send it again in {minutes}, or telephone the firm." in told
