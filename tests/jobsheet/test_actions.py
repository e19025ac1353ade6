"""Handing over, writing on a sheet, erasing: all of it or none, and nothing a caller claims."""

import logging
from datetime import timedelta

import pytest
from django.db import connection
from django.utils import timezone

from tests.firm_builders import (
    ANSWERS,
    ORIGIN,
    check_after,
    make_booking,
    make_delivery,
    make_firm,
    make_job_sheet,
    make_member,
)
from tests.jobsheet.pictures import jpeg
from triage.jobsheet import actions
from triage.jobsheet.actions import add_note, create_job_sheet, erase, erase_expired, queue_test, requeue, set_status
from triage.jobsheet.errors import IdempotencyConflict, Refused
from triage.jobsheet.summary import summarise_with_kit
from triage.knowledge.library import library
from triage.models import Delivery, JobSheet, RatingPlatePhoto

pytestmark = pytest.mark.django_db


def refusal(work):
    with pytest.raises(Refused) as refused:
        work()
    return [(problem.field, problem.message) for problem in refused.value.problems]


def test_what_is_stored_was_computed_here():
    sheet = make_job_sheet()
    assert [tuple(pair) for pair in sheet.answers] == list(ANSWERS)
    assert sheet.pack_version == library().pack.version
    assert sheet.leading_fault == sheet.summary["causes"][0]["fault"] == "fan-element-open"
    assert sheet.band == sheet.summary["band"] == "qualified"
    assert sheet.erase_after - sheet.created == timedelta(days=sheet.firm.retention_days)


def test_a_forged_trail_keeps_what_is_good_and_counts_the_rest():
    forged = [*ANSWERS, ("no-such-question", "yes"), ("cavity", "seven"), ("\ud800", "\x00")]
    sheet = make_job_sheet(answers=forged)
    assert [tuple(pair) for pair in sheet.answers] == list(ANSWERS)
    assert sheet.summary["ignored_answers"] == 3


def test_sheet_and_deliveries_come_together(monkeypatch):
    firm = make_firm()
    monkeypatch.setattr(actions, "_queue", lambda *_told: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        make_job_sheet(firm)
    assert not JobSheet.objects.exists()


@pytest.mark.parametrize(
    ("changes", "channels"),
    [
        ({}, ["email", "webhook"]),
        ({"email": ""}, ["webhook"]),
        ({"webhook_url": ""}, ["email"]),
        ({"email": "", "webhook_url": ""}, []),
    ],
)
def test_a_firm_is_told_on_the_channels_it_listens_on(changes, channels):
    sheet = make_job_sheet(make_firm(**changes))
    assert sorted(sheet.deliveries.values_list("channel", flat=True)) == channels


def test_the_same_request_again_is_the_same_sheet():
    first = make_job_sheet(idempotency_key="again-and-again")
    assert make_job_sheet(first.firm, idempotency_key="again-and-again") == first
    assert Delivery.objects.count() == 2


def test_somebody_elses_key_gives_nothing_away():
    first = make_job_sheet(idempotency_key="again-and-again")
    with pytest.raises(IdempotencyConflict, match="This was sent before with other details"):
        make_job_sheet(first.firm, idempotency_key="again-and-again", booking=make_booking(name="Mallory"))


@pytest.mark.parametrize(
    ("changes", "field", "sentence"),
    [
        (
            {"idempotency_key": "short"},
            "idempotency_key",
            "The key of this request has to be 8 to 200 printable ASCII characters without spaces.",
        ),
        (
            {"booking": make_booking(photo=b"%PDF-1.7 plate.jpg")},
            "photo",
            "This file is not a photo we can read. Send a JPEG, PNG or WebP picture.",
        ),
    ],
)
def test_what_cannot_be_taken_is_refused_with_a_remedy(changes, field, sentence):
    assert refusal(lambda: make_job_sheet(**changes)) == [(field, sentence)]
    assert not JobSheet.objects.exists()


def test_names_in_any_script_and_emoji_come_through_unchanged():
    name, access = "مريم הכהן 👩‍🔧 Žofie", "🐕‍🦺 is friendly\nדלת שנייה"
    sheet = make_job_sheet(booking=make_booking(name=name, access=access))
    sheet.refresh_from_db()
    assert (sheet.name, sheet.access) == (name, access)


def test_a_photo_is_kept_with_its_sheet_and_goes_with_it():
    sheet = make_job_sheet(booking=make_booking(photo=jpeg(40, 30)))
    assert (sheet.photo.width, sheet.photo.height) == (40, 30)
    erase(sheet=sheet, actor="sender")
    assert not RatingPlatePhoto.objects.exists()


def test_a_taken_reference_is_drawn_again(monkeypatch):
    taken = make_job_sheet().reference
    drawn = iter([taken, "ABCDE-FGHJK"])
    monkeypatch.setattr(actions, "new_reference", lambda: next(drawn))
    assert make_job_sheet().reference == "ABCDE-FGHJK"


def test_it_gives_up_after_some_references(monkeypatch):
    taken = make_job_sheet().reference
    monkeypatch.setattr(actions, "new_reference", lambda: taken)
    with pytest.raises(RuntimeError, match="in 3 attempts"):
        make_job_sheet()


def test_a_status_is_one_of_a_few():
    sheet = make_job_sheet()
    member = make_member(sheet.firm)
    set_status(sheet=sheet, status="booked", member=member)
    assert JobSheet.objects.get().status == "booked"
    result = refusal(lambda: set_status(sheet=sheet, status="lost", member=member))
    assert result == [("status", "There is no such status. Use one of: new, booked, done, declined.")]


def test_a_note_of_ten_thousand_characters_is_kept_whole_and_one_more_is_refused():
    sheet = make_job_sheet()
    member = make_member(sheet.firm)
    assert add_note(sheet=sheet, text="é" * 10_000, member=member).text == "é" * 10_000
    result = refusal(lambda: add_note(sheet=sheet, text="x" * 10_001, member=member))
    assert result == [("text", "This note has 10001 characters, and 10000 are the most. Shorten it or write two.")]
    assert refusal(lambda: add_note(sheet=sheet, text=" \n", member=member)) == [
        ("text", "Write something, or leave the note out.")
    ]


def test_who_did_what_is_written_down():
    sheet = make_job_sheet(taken_by=None)
    member = make_member(sheet.firm)
    set_status(sheet=sheet, status="booked", member=member)
    add_note(sheet=sheet, text="Called.", member=member)
    erase(sheet=sheet, actor="sender")
    lines = [(line.actor, line.member, line.action) for line in sheet.audit_entries.all()]
    assert lines == [
        ("sender", None, "handed over"),
        ("member", member, "changed the status of"),
        ("member", member, "wrote a note on"),
        ("sender", None, "erased"),
    ]


def test_nothing_in_the_database_says_whose_oven_an_erased_sheet_was():
    booking = make_booking(photo=jpeg(20, 20))
    sheet = make_job_sheet(booking=booking)
    add_note(sheet=sheet, text="Alex Grey called again.", member=make_member(sheet.firm))
    erase(sheet=sheet, actor="sender")
    personal = [booking.name, booking.telephone, booking.email, booking.street, booking.postcode, booking.serial]
    with connection.cursor() as cursor:
        for table in connection.introspection.table_names(cursor):
            if table.startswith("triage_") and table not in ("triage_firm", "triage_member"):
                cursor.execute(f"SELECT * FROM {connection.ops.quote_name(table)}")
                rows = str(cursor.fetchall())
                assert [value for value in personal if value in rows] == [], table


def test_the_answers_about_the_oven_outlive_the_name():
    sheet = make_job_sheet()
    erase(sheet=sheet, actor="sender")
    kept = JobSheet.objects.get()
    assert kept.summary["causes"][0]["fault"] == "fan-element-open"
    assert kept.plate == {"maker": "Ovenworks", "model": "OW-60", "power": "2.9 kW", "year": "2015"}


def test_an_erased_sheet_is_not_sent_and_its_key_does_not_bring_it_back():
    sheet = make_job_sheet(idempotency_key="late-re-send")
    erase(sheet=sheet, actor="sender")
    assert set(sheet.deliveries.values_list("state", flat=True)) == {"dropped"}
    again = make_job_sheet(sheet.firm, idempotency_key="late-re-send")
    assert again == sheet
    assert again.erased


def test_a_firm_that_may_have_a_copy_is_told_to_erase_it():
    sheet = make_job_sheet()
    sheet.deliveries.filter(channel="webhook").update(attempts=1)
    erase(sheet=sheet, actor="sender")
    erase(sheet=sheet, actor="sender")
    assert sheet.deliveries.filter(state="waiting").get().event == "job_sheet.erased"


def test_nothing_is_written_on_an_erased_sheet():
    sheet = make_job_sheet()
    erase(sheet=sheet, actor="sender")
    result = refusal(lambda: add_note(sheet=sheet, text="Alex", member=make_member(sheet.firm)))
    assert result == [("text", "This job sheet was erased. Nothing more can be written on it.")]


def test_only_sheets_whose_time_is_over_are_purged():
    old, young = make_job_sheet(make_firm(retention_days=1)), make_job_sheet(make_firm(retention_days=30))
    assert erase_expired(now=timezone.now() + timedelta(days=2)) == 1
    assert erase_expired(now=timezone.now() + timedelta(days=2)) == 0
    old.refresh_from_db()
    young.refresh_from_db()
    assert (bool(old.erased), bool(young.erased)) == (True, False)


def test_a_test_message_needs_a_webhook():
    assert queue_test(firm=make_firm()).event == "test"
    result = refusal(lambda: queue_test(firm=make_firm(webhook_url="")))
    assert result == [("webhook_url", "Give the webhook's address first.")]


def test_a_dead_delivery_is_tried_again_from_the_beginning():
    delivery = make_delivery(state="dead", attempts=12)
    assert requeue(delivery=delivery)
    delivery.refresh_from_db()
    assert (delivery.state, delivery.attempts) == ("waiting", 0)
    assert not requeue(delivery=delivery)


def test_the_log_line_has_ids_and_no_name(caplog):
    with caplog.at_level(logging.INFO, "triage.jobsheet.actions"):
        sheet = make_job_sheet()
    assert [record.message for record in caplog.records] == [f"job sheet {sheet.pk} written for firm {sheet.firm_id}"]


def test_a_newer_pack_changes_no_old_sheet(monkeypatch):
    sheet = make_job_sheet()
    before = dict(sheet.summary)
    monkeypatch.setattr(
        actions, "summarise_with_kit", lambda *given: summarise_with_kit(*given) | {"complaint": "Changed"}
    )
    again = create_job_sheet(
        firm=sheet.firm,
        check=check_after(ANSWERS),
        booking=make_booking(),
        idempotency_key=sheet.idempotency_key,
        origin=ORIGIN,
    )
    assert again.summary == before
