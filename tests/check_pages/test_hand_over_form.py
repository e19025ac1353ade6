"""The form as sent, whatever is sent."""

from datetime import date, datetime, timedelta

import pytest

from triage.check_pages.hand_over_form import DAYS, PARTS, read_sent
from triage.jobsheet.errors import Refused

TOMORROW = date.today() + timedelta(days=1)  # noqa: DTZ011  (the clock on the wall)


def sent(rf, **typed):
    return read_sent(rf.post("/", typed))


def test_what_was_typed_is_there_and_the_consent_is_that_of_the_page(rf):
    booking = sent(rf, name="Alex", agreed="yes", power="2.9 kW").booking("I agree.")
    assert (booking.name, booking.power, booking.consent, booking.photo) == ("Alex", "2.9 kW", "I agree.", None)
    assert sent(rf, name="Alex").booking("I agree.").consent == ""


def test_days_become_times_at_home(rf):
    day = str(TOMORROW)
    told = {"day-1": day, "part-1": "morning", "day-3": day, "part-3": "no-such-part", "part-2": "any"}
    windows = sent(rf, **told).booking("").windows
    wanted = [
        (datetime.combine(TOMORROW, start), datetime.combine(TOMORROW, end))
        for start, end in (PARTS["morning"], PARTS["any"])
    ]
    assert [(window.start, window.end) for window in windows] == wanted


@pytest.mark.parametrize(
    ("told", "sentence"),
    [
        ("soon", "This is not a day. Write it as in 2031-05-26."),
        ("2031-02-30", "This is not a day. Write it as in 2031-05-26."),
        ("2001-01-01", "This day is over. Pick another one, or leave it empty."),
    ],
)
def test_a_day_that_is_none_is_said(rf, told, sentence):
    with pytest.raises(Refused) as refused:
        sent(rf, **{f"day-{DAYS}": told}).booking("")
    assert [(problem.field, problem.message) for problem in refused.value.problems] == [("windows", sentence)]


def test_more_than_the_form_can_take_is_not_even_read(rf):
    request = rf.post("/", {"name": "Alex"})
    request.META["CONTENT_LENGTH"] = "31000000"
    assert sent_problem(request) == (
        "This is more than the form can take, and nothing of it was kept. Send it again with a smaller photo."
    )


def test_very_many_fields_are_said_in_a_sentence(rf):
    assert "more than the form can take" in sent_problem(rf.post("/", {f"f{n}": "x" for n in range(1200)}))


@pytest.mark.parametrize("kind", ["multipart/form-data", "multipart/form-data; boundary=x"])
def test_a_form_that_is_torn_is_said_in_a_sentence(rf, kind):
    request = rf.post("/", b"--y\r\nnothing", content_type=kind)
    found = read_sent(request)
    assert [p.message for p in found.problems] in (
        [],
        ["The form did not arrive whole. Fill it in and send it again."],
    )
    assert dict(found.typed) == {}


def sent_problem(request):
    (problem,) = read_sent(request).problems
    return problem.message
