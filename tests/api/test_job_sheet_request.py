"""A body of any shape is read, or refused with every field that is wrong; nothing it says is repeated."""

import base64
from datetime import datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.api.asking import body_of, booked
from tests.firm_builders import ANSWERS
from triage.api.job_sheet_request import field_of, parse_job_sheet_request
from triage.jobsheet.errors import FieldProblem, Refused

WINDOW = {"start": "2031-05-26T09:00", "end": "2031-05-26T12:00:00"}
JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=8,
)


def refused(data):
    with pytest.raises(Refused) as caught:
        parse_job_sheet_request(data)
    return [problem.field for problem in caught.value.problems]


def test_a_whole_body_is_read():
    wanted = parse_job_sheet_request(
        booked(windows=[WINDOW], street="3 Mill Lane") | {"photo": base64.b64encode(b"jpeg").decode()}
    )
    assert wanted.region == "gb-eng"
    assert wanted.answers == ANSWERS
    assert wanted.booking.street == "3 Mill Lane"
    assert wanted.booking.maker == ""
    assert wanted.booking.photo == b"jpeg"
    assert wanted.booking.windows[0].end == datetime(2031, 5, 26, 12)  # noqa: DTZ001  (the clock on the wall)


def test_no_photo_is_no_photo():
    assert parse_job_sheet_request(body_of(photo="")).booking.photo is None


@pytest.mark.parametrize("data", [None, [], "text", 7, True])
def test_what_is_no_object_is_refused_whole(data):
    assert refused(data) == [""]


@pytest.mark.parametrize(
    ("data", "fields"),
    [
        ({}, ["region", "answers", "booking"]),
        (body_of(region=7, answers={}, booking=[]), ["region", "answers", "booking"]),
        (body_of(extra=1), [""]),
        (body_of(answers=["complaint=no-heat"]), ["answers"]),
        (body_of(answers=[["complaint"]]), ["answers"]),
        (body_of(answers=[["complaint", 7]]), ["answers"]),
        (body_of(answers=[["a", "b"]] * 1001), ["answers"]),
        (body_of(answers=[["a", "b" * 801]]), ["answers"]),
        (body_of(photo=7), ["photo"]),
        (body_of(photo=None), ["photo"]),
        (body_of(photo="data:image/jpeg;base64,AAAA"), ["photo"]),
        (body_of(photo="ä"), ["photo"]),
        (body_of(photo="abc"), ["photo"]),
        (booked(name=7, email=None), ["booking.name", "booking.email"]),
        (booked(access="a" * 10_001), ["booking.access"]),
        (booked(surname="Grey", windows={}), ["booking", "booking.windows"]),
        (booked(windows=[WINDOW] * 11), ["booking.windows"]),
        (booked(windows=[{"start": "2031-05-26T09:00"}]), ["booking.windows"]),
        (booked(windows=[{**WINDOW, "end": "2031-02-31T09:00"}]), ["booking.windows"]),
        (booked(windows=[{**WINDOW, "end": "2031-05-26T12:00:00Z"}]), ["booking.windows"]),
        (booked(windows=[{**WINDOW, "end": 7}]), ["booking.windows"]),
    ],
)
def test_every_wrong_field_is_named_at_once(data, fields):
    assert refused(data) == fields


def test_an_unknown_field_is_told_by_those_that_are_known():
    with pytest.raises(Refused) as caught:
        parse_job_sheet_request(body_of(**{"<script>": 1}))
    assert (
        str(caught.value) == "There is a field that we do not know. These are known: region, answers, booking, photo."
    )


def outcome_of(body):
    try:
        return parse_job_sheet_request(body)
    except Refused as reason:
        return reason.problems


@given(data=JSON)
@settings(max_examples=60, deadline=None)
def test_no_body_is_a_surprise(data):
    for body in (
        data,
        body_of(booking=data),
        body_of(answers=data),
        body_of(photo=data),
        booked(windows=data, name=data),
    ):
        assert outcome_of(body)


@pytest.mark.parametrize(
    ("field", "name"),
    [
        ("telephone", "booking.telephone"),
        ("windows", "booking.windows"),
        ("photo", "photo"),
        ("answers", "answers"),
        ("idempotency_key", "Idempotency-Key"),
    ],
)
def test_a_problem_has_the_name_its_field_has_in_the_request(field, name):
    assert field_of(FieldProblem(field, "No.")) == FieldProblem(name, "No.")


def test_answers_may_go_by_the_name_they_had_but_not_by_both():
    body = body_of()
    old = {"trail" if name == "answers" else name: value for name, value in body.items()}
    assert parse_job_sheet_request(old) == parse_job_sheet_request(body)
    with pytest.raises(Refused, match=r"^There is a field that we do not know\."):
        parse_job_sheet_request({**body, "trail": body["answers"]})
