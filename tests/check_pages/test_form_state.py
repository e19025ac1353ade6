"""The signed field: good for one firm and one day, and nobody's to choose."""

import time

import pytest

from triage.check_pages.form_state import key_in, new_state, stale_problem


def test_each_form_has_a_key_of_its_own():
    keys = {key_in(new_state("hearth"), "hearth") for _ in range(20)}
    assert len(keys) == 20
    assert None not in keys


def test_it_is_no_good_for_another_firm():
    assert key_in(new_state("hearth"), "other") is None


@pytest.mark.parametrize("forged", ["", "x", "a:b:c", new_state("hearth")[:-1], new_state("hearth") + "x", "\x00"])
def test_a_forged_one_is_worth_nothing(forged):
    assert key_in(forged, "hearth") is None


def test_after_a_day_it_is_over(monkeypatch):
    state, now = new_state("hearth"), time.time()
    monkeypatch.setattr("time.time", lambda: now + 86_300)
    assert key_in(state, "hearth")
    monkeypatch.setattr("time.time", lambda: now + 86_500)
    assert key_in(state, "hearth") is None


def test_an_old_form_says_why_nothing_was_sent():
    assert stale_problem().message == (
        "This form was open for more than a day, so nothing was sent. Look through it and send it again."
    )
