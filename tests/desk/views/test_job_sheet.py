"""A job sheet over HTTP: ten seconds' worth at the top, words stay words, and every opening leaves a line."""

from datetime import date

import pytest
from django.urls import reverse

from tests.desk.clients import client_of
from tests.firm_builders import make_booking, make_firm, make_job_sheet, make_member
from tests.pack_texts import fault_name
from tests.reading_pages import read_page
from triage.jobsheet.actions import erase
from triage.models import JobSheet, Note
from triage.models.audit_entry import Actor

FAN_ELEMENT = fault_name("fan-element-open")

pytestmark = pytest.mark.django_db

EVIL = "<script>alert(1)</script><img src=x onerror=alert(2)>"


def page_of(sheet, role="owner"):
    return client_of(make_member(sheet.firm, role)).get(reverse("desk-sheet", args=[sheet.reference]))


def test_what_a_repairer_needs_stands_there():
    sheet = make_job_sheet()
    page = read_page(page_of(sheet, "repairer"))
    assert len(page.select("h1")) == 1
    assert page.one(".supply").text == "Said to be off. Not proved dead."
    assert "Ovenworks" in page.one(".plate").text
    assert page.select(".ranked li")[0].text.startswith(FAN_ELEMENT)
    assert "ovens that answer like this" in page.select(".ranked li")[0].text
    assert "One visit is enough" in page.one(".kit").text
    assert "020 7946 0000" in page.one(".visit").text
    assert [bar.text for bar in page.select(".weight-figure")]
    order = [section.attributes["class"].split()[1] for section in page.select("section.block")]
    assert order[:5] == ["safety", "oven-block", "visit", "causes-block", "kit"]


def test_who_took_the_call_stands_in_the_head_and_nobody_where_it_was_no_call():
    firm = make_firm()
    agent = make_member(firm, "agent", username="robin")
    by_telephone, by_themselves = make_job_sheet(firm, taken_by=agent), make_job_sheet(firm)
    assert "by telephone, taken by robin" in read_page(page_of(by_telephone)).one(".job-sheet-header").text
    assert "taken by" not in read_page(page_of(by_themselves)).one(".job-sheet-header").text


def test_every_opening_is_a_line_that_owners_see_and_others_do_not():
    sheet = make_job_sheet()
    page_of(sheet, "repairer")
    assert "opened it" in read_page(page_of(sheet)).one(".audit").text
    assert read_page(page_of(sheet, "repairer")).select(".audit") == []
    assert sheet.audit_entries.filter(action="opened").count() == 3


def test_an_agent_is_offered_nothing_that_is_not_theirs():
    page = read_page(page_of(make_job_sheet(), "agent"))
    hrefs = " ".join(link.attributes["href"] for link in page.select("main a"))
    assert not any(place in hrefs for place in ("/text/", "/json/", "/outcome/", "/erase/"))


@pytest.mark.parametrize(
    "words", [EVIL, "{{ 7|add:7 }}{% now 'Y' %}", "ünal 🔥 שלום\u200f مرحبا", '"><svg onload=alert(1)>']
)
def test_whatever_a_sender_wrote_stays_words(words):
    fields = ("name", "street", "postcode", "access", "maker", "model", "serial", "power", "year", "consent")
    short = {"postcode": 20, "year": 10, "power": 40}
    told = {name: words[: short.get(name, 80)] for name in fields}
    sheet = make_job_sheet(booking=make_booking(**told))
    Note.objects.create(sheet=sheet, text=words, created=sheet.created)
    page = page_of(sheet)
    tree = read_page(page)
    assert [
        element.tag for element in tree.all() if "onerror" in element.attributes or "onload" in element.attributes
    ] == []
    assert [script for script in tree.select("script") if "src" not in script.attributes] == []
    assert words.strip() in " ".join(part for part in tree.one("#notes bdi").children)
    assert " ".join(words[:80].split()) in tree.one(".visit").text


def test_a_token_in_the_address_makes_no_difference(client):
    sheet = make_job_sheet()
    address = reverse("desk-sheet", args=[sheet.reference])
    assert client.get(f"{address}?token={'0' * 40}").url.startswith(reverse("desk-sign-in"))


def test_an_erased_one_names_nobody():
    sheet = make_job_sheet()
    erase(sheet=sheet, actor=Actor.SITE)
    page = page_of(sheet).content.decode()
    assert "Erased. Personal details are gone" in page
    assert not any(gone in page for gone in ("Alex Grey", "020 7946 0000", "Mill Lane", "S-17", "New note"))


def test_an_unfinished_check_says_so():
    sheet = make_job_sheet()
    assert "The questions were not finished." in page_of(sheet).content.decode()
    JobSheet.objects.filter(pk=sheet.pk).update(summary={**sheet.summary, "finished": True})
    assert "The questions were not finished." not in page_of(sheet).content.decode()


def test_the_european_form_is_offered_only_where_it_may_apply(monkeypatch):
    monkeypatch.setattr("triage.jobsheet.formats.repair_form.APPLIES_FROM", date(2020, 1, 1))
    irish = make_job_sheet(make_firm(region="ie", wants_repair_form=True), region="ie")
    assert "European repair form" in page_of(irish).content.decode()
    assert "European repair form" not in page_of(make_job_sheet()).content.decode()
