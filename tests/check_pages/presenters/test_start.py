"""The first page offers every complaint, the ways out and the places."""

from triage.check_pages.presenters.start import start_page
from triage.knowledge.library import library


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
    assert (region.code, region.name) == ("ie", "Ireland")
    names = [choice.label for choice in region.choices]
    assert "Ireland" not in names
    assert names[-1] == "Elsewhere"
    assert len(names) == len(library().regions) - 1


def test_every_way_out_is_there(check_request):
    hrefs = [choice.href for choice in start_page(check_request("/?region=ie")).not_mine]
    assert "/not-this/gas-smell/?region=ie" in hrefs
    assert "/not-this/microwave/?region=ie" in hrefs


def test_an_energy_label_is_among_what_can_be_worked_out_until_something_dangerous_was_said(check_request):
    assert start_page(check_request("/?region=ie")).readings[-1].href == "/check/costs/?region=ie"
    assert start_page(check_request("/?region=ie&danger=none&smoke-source=flames")).readings == []
