"""A hand-over from a phone: once for a key, only from a page of this site, and refused in plain words."""

import pytest

from tests.firm_builders import make_firm
from tests.household.checks_done import answers_of, at
from tests.jobsheet.test_booking_rule import REFUSED
from triage.models import JobSheet

pytestmark = pytest.mark.django_db

KEY = "0123456789abcdef" * 2
FORM = {
    "name": "Alex Grey",
    "telephone": "020 7946 0000",
    "street": "3 Mill Lane",
    "postcode": "AB1 2CD",
    "agreed": "yes",
}
HERE = {"Origin": "http://testserver", "Idempotency-Key": KEY}
ELEMENT = answers_of("fan-element-open", "no-heat")


@pytest.fixture
def firm():
    return make_firm(slug="hearth")


def post(client, form=FORM, answers=ELEMENT, firm="hearth", **headers):
    told = {name: words for name, words in {**HERE, **headers}.items() if words}
    return client.post(at("/check/hand-over/kept/", {"firm": firm, **answers}), form, headers=told)


def test_it_makes_a_job_sheet_and_tells_where_its_sender_sees_it(client, firm):
    response = post(client)
    assert response.status_code == 200
    sheet = JobSheet.objects.get()
    assert response.json()["reference"] == sheet.reference
    assert "no-store" in response.headers["Cache-Control"]
    assert response.cookies == {}
    assert sheet.name in client.get(response.json()["address"]).content.decode()


def test_the_same_key_makes_one_sheet_however_often_it_comes(client, firm):
    assert post(client).json() == post(client).json()
    assert JobSheet.objects.count() == 1


def test_the_same_key_with_other_words_is_refused(client, firm):
    post(client)
    again = post(client, form={**FORM, "name": "Somebody Else"})
    assert again.status_code == 422
    assert "Alex" not in again.content.decode()
    assert JobSheet.objects.count() == 1


@pytest.mark.parametrize("origin", ["https://elsewhere.example", "null", ""])
def test_another_site_cannot_send_for_somebody(client, firm, origin):
    response = post(client, Origin=origin)
    assert response.status_code == 403
    assert response.json()["detail"] == "A hand-over is taken only from a page of this site."
    assert JobSheet.objects.count() == 0


@pytest.mark.parametrize("key", ["", "short", "Z" * 32, KEY + "0"])
def test_a_key_that_is_none_is_refused(client, firm, key):
    response = post(client, **{"Idempotency-Key": key})
    assert response.status_code == 400
    assert "32 digits" in response.json()["detail"]


def test_what_is_wrong_with_the_form_is_said_by_field(client, firm):
    response = post(client, form={"name": "Alex Grey"})
    assert response.status_code == 422
    assert {wrong["field"] for wrong in response.json()["errors"]} >= {"consent"}
    assert all(wrong["detail"].endswith(".") for wrong in response.json()["errors"])


def test_a_firm_that_is_gone_is_told(client, firm):
    assert post(client, firm="nobody").status_code == 404


@pytest.mark.parametrize(
    ("reason", "sentence"),
    [
        ("evacuate-first", "With these answers people have to get out now and call for help. Open the advice again"),
        ("nothing-answered", "The questions are not over yet. Open the check again and answer the rest."),
        ("danger-signs-open", "The questions are not over yet. Open the check again and answer the rest."),
        ("out-of-scope", "With these answers no visit is needed now. Open the advice again to see why."),
        ("solved", "With these answers no visit is needed now. Open the advice again to see why."),
        ("normal", "With these answers no visit is needed now. Open the advice again to see why."),
        ("network-operator", "With these answers no visit is needed now. Open the advice again to see why."),
    ],
)
def test_what_cannot_be_booked_is_told_with_its_reason(client, firm, reason, sentence):
    response = post(client, answers=REFUSED[reason])
    assert response.status_code == 422
    assert response.json()["reason"] == reason
    assert response.json()["detail"].startswith(sentence)
    assert not JobSheet.objects.exists()


def test_it_is_only_posted(client, firm):
    response = client.get(at("/check/hand-over/kept/", {"firm": "hearth"}))
    assert response.status_code == 405
    assert response.headers["Allow"] == "POST"
