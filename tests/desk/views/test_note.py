"""Notes: any script, ten thousand signs, and what cannot be taken stays in its box."""

import pytest
from django.urls import reverse

from tests.desk.clients import client_of
from tests.firm_builders import make_job_sheet, make_member
from tests.reading_pages import read_page
from triage.jobsheet.actions import erase
from triage.models.audit_entry import Actor

pytestmark = pytest.mark.django_db


@pytest.fixture
def sheet():
    return make_job_sheet()


def send(sheet, text):
    client = client_of(make_member(sheet.firm, "agent"))
    return client.post(reverse("desk-note", args=[sheet.reference]), {"text": text})


@pytest.mark.parametrize("text", ["Called.\nComes on Tuesday.", "🔥 مرحبا שלום", "x" * 10_000, "<b>bold</b>"])
def test_a_note_is_kept_as_it_was_written(sheet, text):
    assert send(sheet, text).status_code == 302
    note = sheet.notes.get()
    assert (note.text, note.author.role) == (text, "agent")


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("x" * 10_001, "This note has 10001 characters, and 10000 are the most."),
        (" \n\t ", "Write something, or leave the note out."),
        ("\u202e\x00", "Write something, or leave the note out."),
    ],
)
def test_what_cannot_be_taken_stays_in_its_box(sheet, text, words):
    page = send(sheet, text)
    assert page.status_code == 400
    tree = read_page(page)
    assert words in tree.one("#text_error").text
    assert tree.one("#text").text == " ".join(text.split())
    assert not sheet.notes.exists()


def test_an_erased_job_sheet_takes_no_note(sheet):
    erase(sheet=sheet, actor=Actor.SITE)
    assert "Nothing more can be written on it." in send(sheet, "Alex called again.").content.decode()
    assert not sheet.notes.exists()
