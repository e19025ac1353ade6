"""The inbox over HTTP: what is listed, and how many queries it takes."""

import pytest
from django.urls import reverse

from tests.desk.clients import client_of
from tests.firm_builders import make_booking, make_firm, make_job_sheet, make_member
from tests.pack_texts import fault_name
from tests.reading_pages import read_page

FAN_ELEMENT = fault_name("fan-element-open")

pytestmark = pytest.mark.django_db

INBOX = reverse("desk-inbox")


def test_each_job_sheet_is_a_line_with_its_link(client):
    firm = make_firm()
    sheet = make_job_sheet(firm)
    page = read_page(client_of(make_member(firm)).get(INBOX))
    line = page.one(".record")
    assert page.one(".record a").attributes["href"] == reverse("desk-sheet", args=[sheet.reference])
    for words in ("Alex Grey, AB1 2CD", sheet.reference, FAN_ELEMENT, "New"):
        assert words in line.text


def test_what_may_be_dangerous_is_marked_in_words():
    firm = make_firm()
    make_job_sheet(firm, answers=(("complaint", "smell"), ("smell-type", "plastic-or-fishy")))
    page = read_page(client_of(make_member(firm)).get(INBOX))
    assert page.one(".record--urgent .urgent").text == "Not safe: leave it off"


def test_a_longer_list_takes_no_more_queries(django_assert_max_num_queries):
    firm = make_firm()
    client = client_of(make_member(firm))
    for _ in range(12):
        make_job_sheet(firm)
    with django_assert_max_num_queries(6):
        assert len(read_page(client.get(INBOX)).select(".record")) == 12


def test_filters_stay_filled_in_and_scripts_stay_words():
    firm = make_firm()
    make_job_sheet(firm, booking=make_booking(name="<script>alert(1)</script>"))
    client = client_of(make_member(firm))
    page = client.get(INBOX, {"words": '"><script>alert(1)</script>', "status": "new", "since": "2026-01-01"})
    assert "<script>alert" not in page.content.decode()
    tree = read_page(page)
    assert tree.one("#words").attributes["value"] == '"><script>alert(1)</script>'
    assert tree.one("option[selected]").text == "New"
    assert tree.one("#since").attributes["value"] == "2026-01-01"
    assert "<script>alert" not in client.get(INBOX).content.decode()


def test_an_erased_job_sheet_is_not_listed():
    firm = make_firm()
    sheet = make_job_sheet(firm)
    owner = make_member(firm, "owner")
    client_of(owner).post(reverse("desk-erase", args=[sheet.reference]), {"sure": "yes"})
    assert "No job sheets yet." in client_of(owner).get(INBOX).content.decode()
