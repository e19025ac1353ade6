"""What a person gives is cleaned, and every mistake is told at once."""

from datetime import UTC, datetime, timedelta

import pytest

from tests.firm_builders import make_booking
from triage.jobsheet.booking import Window, check_booking
from triage.jobsheet.errors import Refused

NINE = datetime(2030, 5, 6, 9)  # noqa: DTZ001


def problems_of(**changes):
    with pytest.raises(Refused) as refused:
        check_booking(make_booking(**changes))
    return [(problem.field, problem.message) for problem in refused.value.problems]


def test_a_good_booking_comes_back_without_stray_signs():
    checked = check_booking(make_booking(name="  Alex\u202e\x00\n Grey ", access="Ring\r\ntwice"))
    assert (checked.name, checked.access) == ("Alex Grey", "Ring\ntwice")


def test_every_problem_is_told_at_once():
    assert problems_of(name="", telephone="", email="", consent=" ") == [
        ("name", "Give a name the repairer can ask for."),
        ("consent", "The repairer may only be told once you agree to it."),
        ("telephone", "Give a telephone number or an e-mail address, so that the firm can answer."),
    ]


@pytest.mark.parametrize("telephone", ["020 7946 0000", "+44 (0)20 7946-0000", "01.23.45"])
def test_a_telephone_number_is_taken_as_people_write_it(telephone):
    assert check_booking(make_booking(telephone=telephone)).telephone == telephone


@pytest.mark.parametrize("telephone", ["call me", "12 34", "javascript:1"])
def test_what_cannot_be_dialled_is_refused(telephone):
    assert problems_of(telephone=telephone) == [
        ("telephone", "This is not a telephone number. Write digits, as in 020 7946 0000.")
    ]


def test_what_is_no_e_mail_address_is_refused():
    assert problems_of(email="alex@home@example") == [
        ("email", "This is not an e-mail address. Write it as in name@example.org.")
    ]


def test_a_text_that_is_too_long_says_by_how_much():
    assert problems_of(access="x" * 2001) == [
        ("access", "This has 2001 characters, and 2000 are the most. Shorten it.")
    ]


@pytest.mark.parametrize(
    ("windows", "sentence"),
    [
        ([Window(NINE, NINE)], "A time at home has to end after it begins."),
        ([Window(NINE, NINE + timedelta(hours=1))] * 11, "Give at most 10 times."),
        (
            [Window(datetime(2030, 5, 6, 9, tzinfo=UTC), NINE)],
            "Give times as the clock on the wall shows them, without a time zone.",
        ),
    ],
)
def test_times_at_home_make_sense(windows, sentence):
    assert problems_of(windows=tuple(windows)) == [("windows", sentence)]
