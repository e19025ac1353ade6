"""A check goes to the firm once, whole, or with a sentence on what to put right."""

import pytest
from django.test import Client

from tests.firm_builders import make_firm
from tests.household.checks_done import address
from tests.household.hand_overs import ELEMENT, TYPED, form_address, send, state_of
from tests.jobsheet.pictures import jpeg
from tests.jobsheet.test_booking_rule import REFUSED
from tests.reading_pages import read_page
from triage.models import Firm, JobSheet

pytestmark = pytest.mark.django_db


@pytest.fixture
def firm():
    return make_firm(origins=["https://hearth.example"])


def problems(response):
    assert response.status_code == 422
    assert response["Cache-Control"] == "no-store, private"
    return [item.text for item in read_page(response).select('div[role="alert"] li')]


def test_the_form_sets_no_cookie_and_no_cache_keeps_its_key(client, firm):
    response = client.get(form_address(firm))
    assert response.status_code == 200
    assert not response.cookies
    assert response["Cache-Control"] == "no-store, private"
    assert "frame-ancestors https://hearth.example" in response["Content-Security-Policy"]
    assert state_of(client, form_address(firm)) != state_of(client, form_address(firm))


def test_it_shows_what_the_firm_says_of_a_visit(client, firm):
    says = "dl.firm-says"
    assert read_page(client.get(form_address(firm))).select(says) == []
    Firm.objects.update(
        prices={"Call-out": "£60"}, hours={"Monday": "8 to 18"}, areas=["Kettlewick", "Mill <b>Lane</b>"]
    )
    for there in (form_address(firm), f"/check/hand-over/blank/?firm={firm.slug}"):
        told = read_page(client.get(there)).one(says)
        assert told.text == "Call-out £60 Monday 8 to 18 We come to Kettlewick, Mill <b>Lane</b>"


def test_it_becomes_a_job_sheet_recomputed_from_the_trail(firm):
    client = Client(enforce_csrf_checks=True)
    response = send(client, form_address(firm), photo=("plate.jpg", jpeg(80, 60)))
    sheet = JobSheet.objects.get()
    assert response.status_code == 302
    assert response["Location"].startswith(f"/sheet/{sheet.reference}/?token=")
    assert response["Cache-Control"] == "no-store, private"
    assert (sheet.firm, sheet.name, sheet.leading_fault) == (firm, "Alex Grey", "fan-element-open")
    assert dict(sheet.answers) == ELEMENT
    assert sheet.photo.width == 80
    assert f"{firm.name} may have what I write here" in sheet.consent
    page = read_page(client.get(response["Location"]))
    assert page.one("h1").text == f"Sent to {firm.name}"
    assert page.one(".reference strong").text == sheet.reference


def test_what_was_typed_stays_and_each_problem_has_its_sentence(client, firm):
    response = send(client, form_address(firm), name="", telephone="none", email="a@", street='"><b>', agreed=None)
    assert problems(response) == [
        "Give a name the repairer can ask for.",
        "The repairer may only be told once you agree to it.",
        "This is not a telephone number. Write digits, as in 020 7946 0000.",
        "This is not an e-mail address. Write it as in name@example.org.",
    ]
    page = read_page(response)
    assert page.one("#street").attributes["value"] == '"><b>'
    assert page.one("#telephone").attributes["aria-describedby"] == "telephone-wrong telephone-hint"
    assert not JobSheet.objects.exists()


def test_sent_twice_it_is_one_sheet_with_one_link(client, firm):
    state = state_of(client, form_address(firm))
    first, second = (send(client, form_address(firm), state=state) for _ in range(2))
    assert first["Location"] == second["Location"]
    assert JobSheet.objects.count() == 1


def test_put_right_it_goes_with_the_same_key(client, firm):
    state = state_of(client, form_address(firm))
    wrong = send(client, form_address(firm), state=state, name="")
    assert read_page(wrong).one('input[name="state"]').attributes["value"] == state
    assert send(client, form_address(firm), state=state).status_code == 302


def test_the_same_form_with_other_details_is_asked_for_again(client, firm):
    state = state_of(client, form_address(firm))
    send(client, form_address(firm), state=state)
    again = send(client, form_address(firm), state=state, name="Sam Black")
    assert problems(again) == ["This was sent before with other details. Start a new request."]
    fresh = read_page(again).one('input[name="state"]').attributes["value"]
    assert fresh != state
    assert send(client, form_address(firm), state=fresh, name="Sam Black").status_code == 302


@pytest.mark.parametrize("state", ["forged", "a:b:c", "other firm"])
def test_a_field_that_is_not_ours_sends_nothing(client, firm, state):
    stolen = state_of(client, form_address(make_firm())) if state == "other firm" else state
    assert problems(send(client, form_address(firm), state=stolen)) == [
        "This form was open for more than a day, so nothing was sent. Look through it and send it again."
    ]
    assert not JobSheet.objects.exists()


def test_a_forged_trail_is_recomputed_and_keeps_what_holds(client, firm):
    forged = {**ELEMENT, "did-everything": "fixed", "lamp-state": "blue", "band": "normal", "x" * 300: "y"}
    assert send(client, form_address(firm, forged)).status_code == 302
    sheet = JobSheet.objects.get()
    assert dict(sheet.answers) == ELEMENT
    assert sheet.band == "qualified"


@pytest.mark.parametrize("reason", REFUSED)
def test_where_no_visit_can_be_booked_the_check_goes_on_and_nothing_is_sent(client, firm, reason):
    there = form_address(firm, REFUSED[reason])
    assert read_page(client.get(there)).select("form.typed") == []
    assert client.post(there, TYPED).status_code == 200
    assert not JobSheet.objects.exists()


def test_without_a_firm_we_know_there_is_no_form(client):
    page = read_page(client.get(address("/check/hand-over/", firm="nobody", **ELEMENT)))
    assert page.select("form.typed") == []
    assert "We do not know the repair firm in this address." in page.one('p[role="note"]').text


@pytest.mark.parametrize(
    ("file", "sentence"),
    [
        (("plate.jpg", b"%PDF-1.7\n" + b"x" * 2000), "This file is not a photo we can read."),
        (("plate.jpg", jpeg(40, 30) + b"\0" * 20_000_000), "This photo has 20 MB, and 12 MB is the most."),
        (("plate.jpg", jpeg(400, 300)[:900]), "This photo is damaged and cannot be read to its end."),
    ],
    ids=["a PDF named .jpg", "20 MB", "torn"],
)
def test_a_photo_that_is_none_is_said_and_nothing_is_lost(client, firm, file, sentence):
    response = send(client, form_address(firm), photo=file)
    (told,) = problems(response)
    assert told.startswith(sentence)
    page = read_page(response)
    assert page.one("#name").attributes["value"] == "Alex Grey"
    assert page.one("#photo-wrong").text == told
    assert "open" in page.one("main details.aside").attributes


@pytest.mark.parametrize("name", ["Zoë 🦉", "שלום עליכם", "محمد", "李小龍", "O’Brien <b>"])
def test_any_name_arrives_as_it_was_written(client, firm, name):
    response = send(client, form_address(firm), name=name)
    assert JobSheet.objects.get().name == name
    assert name in {told.text for told in read_page(client.get(response["Location"])).select("dd")}


def test_an_override_of_direction_is_taken_out(client, firm):
    send(client, form_address(firm), name="Alex \u202eyerG")
    assert JobSheet.objects.get().name == "Alex yerG"


def test_ten_thousand_characters_are_said_and_kept_in_the_form(client, firm):
    response = send(client, form_address(firm), access="é" * 10_000)
    assert problems(response) == ["This has 10000 characters, and 2000 are the most. Shorten it."]
    assert read_page(response).one("#access").text == "é" * 10_000
