"""The first page offers every complaint, the ways out and the places."""

import re

from hypothesis import given
from hypothesis import strategies as st

from tests.household.checks_done import links_of
from tests.reading_pages import read_page
from triage.check_pages.presenters.start import search_terms, start_page
from triage.knowledge.library import library

FEW_LETTERS = st.text(alphabet="ab'é, 1", max_size=40)


def test_each_line_records_the_complaint_and_what_its_words_already_say(check_request):
    page = start_page(check_request("/?region=ie"))
    assert len(page.complaints) == len(library().pack.complaints)
    line = next(line for line in page.complaints if line.words.startswith("The clock is lit"))
    assert line.href == "/check/?region=ie&complaint=nothing-on&heat-main=no-heat&lamp-state=lamp-dead"


def test_an_answer_given_before_goes_along(check_request):
    page = start_page(check_request("/?region=ie&danger=none"))
    assert all("danger=none" in line.href for line in page.complaints)
    assert page.region.choices[0].href.endswith("&danger=none")


def test_the_place_shown_is_not_among_the_others_and_elsewhere_stands_last(check_request):
    region = start_page(check_request("/?region=ie")).region
    assert region.name == "Ireland"
    names = [choice.label for choice in region.choices]
    assert "Ireland" not in names
    assert names[-1] == "Elsewhere"
    assert len(names) == len(library().regions) - 1


def test_every_way_out_is_there(check_request):
    hrefs = [choice.href for choice in start_page(check_request("/?region=ie")).not_mine]
    assert "/not-this/gas-smell/?region=ie" in hrefs
    assert "/not-this/microwave/?region=ie" in hrefs


def test_an_energy_label_is_among_what_can_be_worked_out_until_something_dangerous_was_said(client):
    shown = links_of(read_page(client.get("/?region=ie")))
    assert shown["The energy label"] == "/check/costs/?region=ie"
    assert "The energy label" not in links_of(read_page(client.get("/?region=ie&danger=none&smoke-source=flames")))


def found_by(typed, phrases):
    """As the page's script looks: words are runs of letters and digits, found by how they begin."""
    return any(word.startswith(typed) for word in re.findall(r"[^\W_]+", phrases.lower()))


@given(FEW_LETTERS, st.text(alphabet="abé1", min_size=1, max_size=4))
def test_the_search_box_finds_the_same_with_fewer_words(phrases, typed):
    assert found_by(typed, search_terms(phrases)) == found_by(typed, phrases)
    assert search_terms(search_terms(phrases)) == search_terms(phrases)


def test_a_word_to_search_stands_once_and_not_before_one_that_begins_with_it():
    assert search_terms("Trip, tripped, trips the RCD, trip switch, rcd") == "tripped trips the rcd switch"
    assert search_terms("") == search_terms(" , ") == ""
