"""The European repair form: only where it may apply, only as far as it is the firm's to say."""

from datetime import date

import pytest

from tests.jobsheet.sheets import make_sheet
from triage.jobsheet.formats.repair_form import form_text, repair_form
from triage.knowledge.library import library
from triage.models import Firm

FIRM = Firm(name="Hearth", email="desk@hearth.example", wants_repair_form=True)
TODAY = date(2026, 9, 1)
# The member states of the Union among the territories of the regions.
UNION = {"de", "es", "fr", "ie", "it", "nl", "pl", "se"}


def test_it_is_offered_in_the_union_and_nowhere_else():
    offered = {region for region in library().regions if repair_form(make_sheet(region=region), FIRM, TODAY)}
    assert offered == UNION


@pytest.mark.parametrize(
    ("firm", "today"),
    [(Firm(name="Hearth"), TODAY), (FIRM, date(2026, 7, 30))],
    ids=["not wanted", "before its day"],
)
def test_it_is_not_made(firm, today):
    assert repair_form(make_sheet(region="ie"), firm, today) is None


def test_what_only_the_repairer_can_promise_stays_empty():
    text = form_text(repair_form(make_sheet(region="ie"), FIRM, TODAY))
    assert "Repairer: Hearth\n" in text
    assert "Goods to be repaired: Electric oven, Ovenworks, OW-60\n" in text
    assert "Price, or how it is worked out and the most it can be: ______\n" in text
    assert "Valid until: ______\n" in text
    assert "Alex Grey" not in text


def test_its_caveats_come_first():
    first = form_text(repair_form(make_sheet(region="ie"), FIRM, TODAY)).split("Repairer:")[0]
    assert "Using this form is voluntary." in first
    # Directive (EU) 2024/1799, Annex II: the groups named in the official summaries seen include no ovens.
    assert "Ovens are not among the goods we have seen listed for repair by the maker." in first
    assert "Compare the fields with Annex I" in first
    assert "Nobody has opened the oven." in first
