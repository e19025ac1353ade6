"""What a firm says of its visits stands as it wrote it, in the order of its settings."""

from triage.check_pages.presenters.firm_words import firm_words
from triage.models import Firm


def test_prices_hours_and_areas_are_told_as_they_were_written():
    firm = Firm(
        prices={"Half an hour": "£30: parts extra", "Call-out": "£60"},
        hours={"Monday to Friday": "8 to 18"},
        areas=["Kettlewick", "Ünstadt"],
    )
    assert firm_words(firm) == [
        ("Half an hour", "£30: parts extra"),
        ("Call-out", "£60"),
        ("Monday to Friday", "8 to 18"),
        ("We come to", "Kettlewick, Ünstadt"),
    ]


def test_a_firm_that_says_nothing_has_no_lines():
    assert firm_words(Firm()) == []
