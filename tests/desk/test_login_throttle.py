"""Tries to get in: counted by account and by address, alike for accounts that do not exist."""

from datetime import timedelta

import pytest
from django.utils import timezone

from triage.desk.login_throttle import MAX_PER_ACCOUNT, MAX_PER_ADDRESS, WINDOW, clear_attempts, record_attempt
from triage.models import SignInTry

pytestmark = pytest.mark.django_db


def test_an_account_may_be_tried_so_often_however_it_is_written_and_from_wherever():
    tries = [
        record_attempt("Robin" if number % 2 else "robin", f"192.0.2.{number}") for number in range(MAX_PER_ACCOUNT + 1)
    ]
    assert tries == [True] * MAX_PER_ACCOUNT + [False]
    assert record_attempt("kim", "192.0.2.99")


def test_an_address_may_try_so_many_accounts():
    tries = [record_attempt(f"name-{number}", "192.0.2.1") for number in range(MAX_PER_ADDRESS + 1)]
    assert tries == [True] * MAX_PER_ADDRESS + [False]
    assert record_attempt("kim", "192.0.2.2")


def test_after_a_while_it_may_be_tried_again():
    for _ in range(MAX_PER_ACCOUNT + 1):
        record_attempt("robin", "192.0.2.1")
    SignInTry.objects.update(at=timezone.now() - WINDOW - timedelta(seconds=1))
    assert record_attempt("robin", "192.0.2.1")
    assert SignInTry.objects.count() == 1


def test_who_got_in_starts_afresh():
    for _ in range(MAX_PER_ACCOUNT):
        record_attempt("robin", "192.0.2.1")
    clear_attempts("ROBIN")
    assert record_attempt("robin", "192.0.2.1")


def test_the_table_names_nobody():
    record_attempt("robin\ud800", "192.0.2.1")
    kept = SignInTry.objects.get()
    assert "robin" not in kept.account
    assert "192.0.2.1" not in kept.address
