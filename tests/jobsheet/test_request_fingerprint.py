"""A re-send has the same print; any other request has another."""

from dataclasses import fields, replace

import pytest

from tests.firm_builders import TRAIL, make_booking
from triage.jobsheet.booking import Booking
from triage.jobsheet.errors import Refused
from triage.jobsheet.request_fingerprint import check_key, request_fingerprint


def test_the_same_request_has_the_same_print():
    assert request_fingerprint(TRAIL, "ie", make_booking()) == request_fingerprint(
        map(list, TRAIL), "ie", make_booking()
    )


@pytest.mark.parametrize("name", [field.name for field in fields(Booking)])
def test_each_field_counts(name):
    other = {"windows": (), "photo": b"another"}.get(name, "another")
    changed = replace(make_booking(), **{name: other})
    assert request_fingerprint(TRAIL, "ie", changed) != request_fingerprint(TRAIL, "ie", make_booking())


def test_answers_and_place_count():
    prints = {request_fingerprint(TRAIL, "ie", make_booking()), request_fingerprint(TRAIL, "us", make_booking())}
    assert len(prints | {request_fingerprint(TRAIL[:2], "ie", make_booking())}) == 3


@pytest.mark.parametrize("key", ["", "short", "with space in it", "é" * 10, "x" * 201, "line\nbreak"])
def test_a_key_is_long_enough_and_plain(key):
    with pytest.raises(Refused, match="has to be 8 to 200 letters, digits or signs without spaces"):
        check_key(key)


def test_a_uuid_is_a_key():
    check_key("5f0c4b9e-8f5a-4c83-8e0e-3f1d0f7f8a55")


def test_what_has_no_print_is_a_mistake_of_ours():
    with pytest.raises(TypeError, match="set has no print"):
        request_fingerprint(TRAIL, "ie", replace(make_booking(), name={1}))
