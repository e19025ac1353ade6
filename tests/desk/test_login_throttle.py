"""Attempts to get in: counted by account and by address, alike for accounts that do not exist."""

import pytest

from triage.desk.login_throttle import PER_ACCOUNT, PER_ADDRESS, clear_attempts, record_attempt
from triage.models import RequestCount

pytestmark = pytest.mark.django_db


def test_an_account_may_be_tried_so_often_however_it_is_written_and_from_wherever():
    attempts = [
        record_attempt("Robin" if number % 2 else "robin", f"192.0.2.{number}")
        for number in range(PER_ACCOUNT.quota + 1)
    ]
    assert attempts == [True] * 8 + [False]
    assert record_attempt("kim", "192.0.2.99")


def test_an_address_may_try_so_many_accounts():
    attempts = [record_attempt(f"name-{number}", "192.0.2.1") for number in range(PER_ADDRESS.quota + 1)]
    assert attempts == [True] * 40 + [False]
    assert record_attempt("kim", "192.0.2.2")


def test_after_a_quarter_of_an_hour_it_may_be_tried_again(rate_limit_clock):
    for _ in range(PER_ACCOUNT.quota + 1):
        record_attempt("robin", "192.0.2.1")
    assert not record_attempt("robin", "192.0.2.1")
    rate_limit_clock.advance(minutes=15)
    assert record_attempt("robin", "192.0.2.1")


def test_who_got_in_starts_afresh_and_the_address_does_not():
    for _ in range(PER_ACCOUNT.quota):
        record_attempt("robin", "192.0.2.1")
    clear_attempts("ROBIN")
    assert record_attempt("robin", "192.0.2.1")
    assert sorted(RequestCount.objects.values_list("count", flat=True)) == [1, 9]


def test_the_table_names_nobody():
    record_attempt("robin\ud800", "192.0.2.1")
    assert all(len(row.bucket) == 64 and "robin" not in row.bucket for row in RequestCount.objects.all())
