"""The inbox: filters, search, pages, and another firm's job sheets never among them."""

from datetime import UTC, datetime

import pytest

from tests.firm_builders import make_booking, make_firm, make_job_sheet, make_member
from triage.desk.presenters.inbox import MAX_SEARCH_LENGTH, PAGE_SIZE, inbox_page, parse_filter
from triage.models import JobSheet

pytestmark = pytest.mark.django_db

SMELL = (("complaint", "smell"), ("smell-type", "plastic-or-fishy"))


@pytest.fixture
def firm():
    firm = make_firm()
    make_job_sheet(make_firm(), booking=make_booking(name="Somebody else's"))
    return firm


def names(firm, page="1", **asked):
    return [line.contact.split(",")[0] for line in inbox_page(make_member(firm), parse_filter(asked), page).rows]


def test_words_that_are_cut_end_with_a_letter():
    wanted = parse_filter({"words": f"{'x' * (MAX_SEARCH_LENGTH - 1)} yz"})
    assert wanted.text == "x" * (MAX_SEARCH_LENGTH - 1)
    assert parse_filter({"words": wanted.text}) == wanted


def test_they_are_narrowed_down_by_status_and_band(firm):
    make_job_sheet(firm, answers=SMELL, booking=make_booking(name="Kim"))
    booked = make_job_sheet(firm)
    JobSheet.objects.filter(pk=booked.pk).update(status="booked")
    assert names(firm) == ["Alex Grey", "Kim"]
    assert names(firm, band="make-safe") == ["Kim"]
    assert names(firm, status="booked") == ["Alex Grey"]
    assert names(firm, status="booked", band="make-safe") == []
    assert names(firm, status="'; --", band="x") == ["Alex Grey", "Kim"]


@pytest.mark.parametrize(
    ("since", "until", "count"),
    [
        ("2030-01-02", "", 1),
        ("2030-01-03", "", 0),
        ("", "2030-01-01", 0),
        ("", "2030-01-02", 1),
        ("2030-01-02", "2030-01-02", 1),
        ("0001-01-01", "9999-12-31", 1),
    ],
)
def test_a_day_is_whole(firm, since, until, count):
    make_job_sheet(firm)
    late = datetime(2030, 1, 2, 23, 59, 59, tzinfo=UTC)
    JobSheet.objects.filter(firm=firm).update(created=late, erase_after=late.replace(year=2031))
    assert len(names(firm, since=since, until=until)) == count


def test_what_is_no_day_is_told_and_left_out(firm):
    make_job_sheet(firm)
    page = inbox_page(make_member(firm), parse_filter({"since": "yesterday", "until": "2030-02-30"}), "1")
    assert len(page.rows) == 1
    assert page.filter.problems == (
        "“yesterday” is not a date. Write it like 2026-03-01.",
        "“2030-02-30” is not a date. Write it like 2026-03-01.",
    )


@pytest.mark.parametrize("words", ["ÜNAL 🔥", "ünal 🔥", "7946", "ab1", "mill lane", "unal@", "ovenworks", "no heat"])
def test_words_are_found_in_name_place_plate_and_trouble(firm, words):
    make_job_sheet(firm, booking=make_booking(name="ünal 🔥 ÜNAL 🔥", email="unal@home.example"))
    assert len(names(firm, words=words)) == 1


def test_a_reference_is_found_however_it_is_written(firm):
    sheet = make_job_sheet(firm)
    for words in (sheet.reference, sheet.reference.lower().replace("-", " "), sheet.reference[:5]):
        assert len(names(firm, words=words)) == 1
    assert names(firm, words="%") == names(firm, words="_") == []


def test_words_are_cut_and_cleaned():
    assert parse_filter({"words": "a\x00  b" + "c" * 500}).text == ("a b" + "c" * 500)[:MAX_SEARCH_LENGTH]


def test_a_long_list_comes_in_pages_that_keep_the_filters(firm):
    for number in range(PAGE_SIZE + 1):
        make_job_sheet(firm, booking=make_booking(name=f"Person {number}"))
    member, wanted = make_member(firm), parse_filter({"words": "person"})
    first, last = inbox_page(member, wanted, "1"), inbox_page(member, wanted, "2")
    assert (len(first.rows), len(last.rows)) == (PAGE_SIZE, 1)
    assert (first.older_href, first.newer_href) == ("?words=person&page=2", "")
    assert (last.older_href, last.newer_href) == ("", "?words=person&page=1")
    assert last.rows[0].contact.startswith("Person 0,")
    assert inbox_page(member, wanted, "no-page").rows == first.rows
    assert inbox_page(member, wanted, "999").rows == last.rows
