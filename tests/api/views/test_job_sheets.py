"""`POST /api/v1/firms/<firm>/job-sheets`: one sheet for one key, whatever is forged, repeated, too large or broken."""

import base64
import json

import pytest

from tests.api.asking import KEY, PAGE, address, bearer, body_of, booked, fields_in, firm_with_key, problem_in, send
from tests.jobsheet.pictures import jpeg
from tests.jobsheet.test_booking_rule import REFUSED
from triage.models import Delivery, JobSheet, RatingPlatePhoto

pytestmark = pytest.mark.django_db


@pytest.fixture
def door(client):
    """Sends as the firm's own system."""
    firm, secret = firm_with_key()

    def knock(item=None, **headers):
        return send(client, firm, item, **{**bearer(secret), **headers})

    knock.firm = firm
    return knock


def test_a_sheet_is_made_with_its_deliveries_and_can_be_read_back(door, client):
    response = door()
    assert response.status_code == 201
    payload, sheet = response.json(), JobSheet.objects.get()
    assert payload["reference"] == sheet.reference
    assert response.headers["Location"] == payload["href"] == f"http://testserver{address(door.firm, sheet.reference)}"
    assert response.headers["Cache-Control"] == "no-store, private"
    assert Delivery.objects.filter(sheet=sheet).count() == 2
    assert client.get(payload["sender_link"].removeprefix("http://testserver")).status_code == 200


def test_a_repeat_gets_the_same_sheet_and_makes_none(door):
    first, again = door(), door()
    assert (first.status_code, again.status_code) == (201, 200)
    assert first.json() == again.json()
    assert JobSheet.objects.count() == 1
    assert Delivery.objects.count() == 2


def test_a_key_with_another_body_is_refused_and_tells_nothing_of_the_first(door):
    reference = door().json()["reference"]
    response = door(booked(name="Robin Black"))
    assert response.status_code == 422
    assert problem_in(response)["type"] == "urn:oven-fault-check:problem:idempotency-conflict"
    assert fields_in(response) == ["Idempotency-Key"]
    assert reference not in response.content.decode()
    assert JobSheet.objects.count() == 1


def test_another_firms_key_of_the_same_name_is_another_request(door, client):
    other, secret = firm_with_key()
    assert door().status_code == 201
    assert send(client, other, body_of(), key=KEY, **bearer(secret)).status_code == 201


@pytest.mark.parametrize(("key", "status"), [("", 400), ("short", 422), ("with a space in it", 422), ("k" * 201, 422)])
def test_a_request_needs_a_key_of_its_own(door, key, status):
    response = door(key=key)
    assert response.status_code == status
    assert fields_in(response) == ["Idempotency-Key"]


def test_no_conclusion_of_the_sender_is_taken_over(door):
    assert door(body_of(band="normal")).status_code == 422
    trail = [["complaint", "smell"], ["smell-type", "plastic-or-fishy"], ["band", "normal"], ["red-flags", "none"]]
    assert door(body_of(answers=trail)).json()["band"] == "make-safe"
    assert JobSheet.objects.get().summary["ignored_answers"] == 2


@pytest.mark.parametrize(
    ("data", "fields"),
    [
        (body_of(region="atlantis"), ["region"]),
        (body_of(region="\x00"), ["region"]),
        (booked(telephone="ring me", email="at home", name=""), ["booking.name", "booking.telephone", "booking.email"]),
        (booked(access="a" * 2001), ["booking.access"]),
        (booked(consent=" \x00 "), ["booking.consent"]),
        (body_of(photo=base64.b64encode(b"%PDF-1.7 plate.jpg").decode()), ["photo"]),
        (body_of(photo=base64.b64encode(jpeg(40, 30)[:300]).decode()), ["photo"]),
        ([body_of()], [""]),
    ],
)
def test_what_cannot_be_taken_is_named_and_nothing_is_written(door, data, fields):
    response = door(data)
    assert response.status_code == 422
    assert sorted(fields_in(response)) == sorted(fields)
    assert not JobSheet.objects.exists()
    assert not Delivery.objects.exists()


@pytest.mark.parametrize(
    ("reason", "detail"),
    [
        (
            "evacuate-first",
            "By these answers people have to get out now and call for help from outside. Tell them that",
        ),
        ("nothing-answered", "Nothing was answered yet. Answer at least what is wrong."),
        ("out-of-scope", "By these answers this is not an electric oven, and the firm cannot take it as one."),
        ("danger-signs-open", "Nobody was asked about danger signs with these answers. Ask what their step asks"),
        ("solved", "By these answers something that was tried put it right, so no visit is needed."),
        ("normal", "By these answers the oven works as it should, so no visit is needed."),
        (
            "network-operator",
            "By these answers this is for the electricity network to put right, and not for the firm.",
        ),
    ],
)
def test_what_cannot_be_booked_is_told_with_its_reason(door, reason, detail):
    response = door(body_of(answers=[list(pair) for pair in REFUSED[reason].items()]))
    assert response.status_code == 422
    problem = problem_in(response)
    assert problem["type"] == "urn:oven-fault-check:problem:not-bookable"
    assert (problem["reason"], fields_in(response)) == (reason, ["answers"])
    assert problem["detail"].startswith(detail)
    assert not JobSheet.objects.exists()


def test_answers_that_name_no_question_are_none(door):
    response = door(body_of(answers=[["a", "b"], ["\ud800", "\x00"]]))
    assert problem_in(response)["reason"] == "nothing-answered"


def test_a_photo_comes_along_encoded_again(door):
    assert door(body_of(photo=base64.b64encode(jpeg(80, 60)).decode())).status_code == 201
    kept = bytes(RatingPlatePhoto.objects.get().jpeg)
    assert kept.startswith(b"\xff\xd8")
    assert b"A maker of phones" not in kept


def test_a_photo_of_20_mb_is_refused_unread(door):
    response = door(json.dumps(body_of(photo="A" * 26_700_000)).encode())
    assert response.status_code == 413
    assert problem_in(response)["detail"] == "The body may have 16400000 bytes at the most."


def test_a_photo_of_just_too_many_bytes_is_told_as_one(door):
    response = door(body_of(photo=base64.b64encode(b"\xff" * 12_000_001).decode()))
    assert fields_in(response) == ["photo"]


@pytest.mark.parametrize(
    ("content", "status"), [(b"{", 400), (b"\xff", 400), (b"[" * 50_000, 400), (b'{"a":1,"a":2}', 400)]
)
def test_a_broken_body_is_told_in_the_one_shape(door, content, status):
    response = door(content)
    assert response.status_code == status
    assert problem_in(response)["type"] == "urn:oven-fault-check:problem:bad-request"


def test_a_form_is_not_json(door):
    response = door(b"region=gb-eng", Content_Type="application/x-www-form-urlencoded")
    assert response.status_code == 415
    assert problem_in(response)["type"] == "urn:oven-fault-check:problem:unsupported-media-type"


def test_names_in_any_script_are_kept(door):
    name = "نور 🐢 Żółw"
    assert door(booked(name=f"{name}\x00\u202e")).status_code == 201
    assert JobSheet.objects.get().name == name


def test_nothing_is_read_for_who_may_not_ask(client):
    firm, _words = firm_with_key()
    assert send(client, firm, b"{", Origin="https://elsewhere.example").status_code == 403
    assert send(client, firm, b"{", Origin=PAGE).status_code == 400


def test_only_a_post_makes_a_sheet(client):
    firm, secret = firm_with_key()
    response = client.get(address(firm), headers=bearer(secret))
    assert response.status_code == 405
    assert response.headers["Allow"] == "POST, OPTIONS"
    assert problem_in(response)["detail"] == "Use one of these methods here: POST, OPTIONS."
