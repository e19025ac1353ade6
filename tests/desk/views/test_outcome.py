"""What was found, over HTTP: five presses for the usual visit, mended later, and refused in words."""

import pytest
from django.urls import reverse

from tests.desk.clients import client_of
from tests.firm_builders import make_job_sheet, make_member
from tests.reading_pages import read_page
from triage.models import Outcome

pytestmark = pytest.mark.django_db


@pytest.fixture
def sheet():
    return make_job_sheet()


@pytest.fixture
def repairer(sheet):
    return client_of(make_member(sheet.firm, "repairer"))


def address(sheet):
    return reverse("desk-outcome", args=[sheet.reference])


def test_the_usual_visit_takes_five_presses(sheet, repairer):
    """Counted on the page itself: the first cause, the first part, first visit, minutes, and the button."""
    page = read_page(repairer.get(address(sheet)))
    presses = []
    told = {}
    for name in ("found", "fitted", "result", "minutes"):
        first = page.select(f'input[name="{name}"]')[0]
        assert first.attributes["type"] in ("checkbox", "radio")
        told[name] = first.attributes["value"]
        presses.append(name)
    presses.append(page.one(".primary-action").text)
    assert len(presses) == 5
    assert repairer.post(address(sheet), told).status_code == 302
    outcome = Outcome.objects.get(sheet=sheet)
    assert outcome.found == [sheet.summary["causes"][0]["fault"]]
    assert outcome.fitted == [sheet.summary["kit"]["parts"][0]["name"]]
    assert (outcome.fixed_first_visit, outcome.minutes) == (True, 15)
    sheet.refresh_from_db()
    assert sheet.status == "done"


def test_it_can_be_mended_and_shows_what_was_written(sheet, repairer):
    told = {"found": "fan-element-open", "result": "first-visit", "minutes": "30", "other_parts": "a clip"}
    repairer.post(address(sheet), told)
    page = read_page(repairer.get(address(sheet)))
    assert {box.attributes["value"] for box in page.select("input[checked]")} == {
        *("fan-element-open", "a clip", "first-visit", "30")
    }
    repairer.post(address(sheet), told | {"result": "repairable"})
    assert Outcome.objects.get(sheet=sheet).result == "repairable"


def test_what_is_wrong_is_told_and_what_was_chosen_stays(sheet, repairer):
    page = repairer.post(address(sheet), {"found": "fan-element-open", "result": "fixed", "other_minutes": "9999"})
    assert page.status_code == 400
    tree = read_page(page)
    assert tree.one(".error").text == "Give the minutes of work, from 1 to 1440."
    assert [box.attributes["value"] for box in tree.select("input[checked]")] == ["fan-element-open", "fixed"]
    assert tree.one("#other_minutes").attributes["value"] == "9999"


@pytest.mark.parametrize("found", ["<script>", "no-such-fault", "x" * 5000])
def test_a_forged_fault_is_refused(sheet, repairer, found):
    page = repairer.post(address(sheet), {"found": found, "result": "fixed", "minutes": "30"})
    assert page.status_code == 400
    assert "There is no fault" in page.content.decode()
    assert "<script>" not in page.content.decode().replace('<script type="module"', "")
    assert not Outcome.objects.exists()
