"""A re-send has the same print; any other request has another."""

from dataclasses import fields, replace

import pytest

from tests.firm_builders import ANSWERS, check_after, make_booking
from triage.jobsheet.booking import Booking
from triage.jobsheet.errors import Refused
from triage.jobsheet.request_fingerprint import check_key, request_fingerprint


def print_of(answers=ANSWERS, region="ie", booking=None):
    return request_fingerprint(check_after(answers, region), booking or make_booking())


def test_the_same_request_has_the_same_print():
    assert print_of() == print_of(iter(ANSWERS))


@pytest.mark.parametrize("name", [field.name for field in fields(Booking)])
def test_each_field_counts(name):
    other = {"windows": (), "photo": b"another"}.get(name, "another")
    changed = replace(make_booking(), **{name: other})
    assert print_of(booking=changed) != print_of()


def test_answers_and_place_count():
    assert len({print_of(), print_of(region="us"), print_of(ANSWERS[:2])}) == 3


@pytest.mark.parametrize("key", ["", "short", "with space in it", "é" * 10, "x" * 201, "line\nbreak"])
def test_a_key_is_long_enough_and_plain(key):
    with pytest.raises(Refused, match="has to be 8 to 200 printable ASCII characters without spaces"):
        check_key(key)


def test_a_uuid_is_a_key():
    check_key("5f0c4b9e-8f5a-4c83-8e0e-3f1d0f7f8a55")


def test_what_has_no_print_is_a_mistake_of_ours():
    with pytest.raises(TypeError, match="set has no print"):
        print_of(booking=replace(make_booking(), name={1}))
