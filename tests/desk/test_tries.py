"""Tries to get in: counted by account and by address, alike for accounts that do not exist."""

from datetime import timedelta

import pytest
from django.utils import timezone

from triage.desk.tries import MOST_FROM_ADDRESS, MOST_OF_ACCOUNT, SPAN, begin_try, forget_tries
from triage.models import SignInTry

pytestmark = pytest.mark.django_db


def test_an_account_may_be_tried_so_often_however_it_is_written_and_from_wherever():
    tries = [
        begin_try("Robin" if number % 2 else "robin", f"192.0.2.{number}") for number in range(MOST_OF_ACCOUNT + 1)
    ]
    assert tries == [True] * MOST_OF_ACCOUNT + [False]
    assert begin_try("kim", "192.0.2.99")


def test_an_address_may_try_so_many_accounts():
    tries = [begin_try(f"name-{number}", "192.0.2.1") for number in range(MOST_FROM_ADDRESS + 1)]
    assert tries == [True] * MOST_FROM_ADDRESS + [False]
    assert begin_try("kim", "192.0.2.2")


def test_after_a_while_it_may_be_tried_again():
    for _ in range(MOST_OF_ACCOUNT + 1):
        begin_try("robin", "192.0.2.1")
    SignInTry.objects.update(at=timezone.now() - SPAN - timedelta(seconds=1))
    assert begin_try("robin", "192.0.2.1")
    assert SignInTry.objects.count() == 1


def test_who_got_in_starts_afresh():
    for _ in range(MOST_OF_ACCOUNT):
        begin_try("robin", "192.0.2.1")
    forget_tries("ROBIN")
    assert begin_try("robin", "192.0.2.1")


def test_the_table_names_nobody():
    begin_try("robin\ud800", "192.0.2.1")
    kept = SignInTry.objects.get()
    assert "robin" not in kept.account
    assert "192.0.2.1" not in kept.address
