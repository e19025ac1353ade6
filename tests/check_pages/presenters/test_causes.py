"""Chances are so many of ten ovens, and the answers that speak are named in plain words."""

import pytest

from tests.household.checks_done import answers_of, at
from tests.pack_texts import fault_name
from tests.reading_pages import read_page
from triage.check_pages.presenters.causes import MAX_LINES, Cause, causes_of
from triage.check_pages.view_models import PARTS
from triage.jobsheet.sentences import sentence

FAN_ELEMENT = fault_name("fan-element-open")


@pytest.mark.parametrize(
    ("per_ten", "words"),
    [
        (0, "Fewer than 1 in 10 ovens that answer like this"),
        (7, "About 7 in 10 ovens that answer like this"),
        (10, "More than 9 in 10 ovens that answer like this"),
    ],
)
def test_a_chance_is_so_many_of_ten_and_never_certain(per_ten, words):
    assert sentence("chance", cause=Cause("", per_ten, "", [], [], "")) == words


def test_the_answers_that_speak_for_a_cause_are_named(check_request):
    seen = check_request(at("/check/", answers_of("fan-element-open", "no-heat")))
    leading = causes_of(seen, seen.step.verdict)[0]
    assert leading.name == FAN_ELEMENT
    assert 1 <= len(leading.points_to) <= MAX_LINES
    assert all(": " in line and "-" not in line.split(":")[0] for line in leading.points_to)


def test_nothing_for_the_repairer_alone_is_in_a_cause(check_request):
    seen = check_request(at("/check/", answers_of("fan-element-open", "no-heat")))
    shown = repr(causes_of(seen, seen.step.verdict))
    assert "ohm" not in shown
    assert "terminals" not in shown


def test_each_cause_lights_its_part_of_the_oven_on_the_page_and_names_it(client):
    page = read_page(client.get(at("/check/", answers_of("fan-element-open", "no-heat"))))
    lit = [use.attributes["href"] for use in page.select(".causes .lit")]
    assert len(lit) == len(page.select(".causes article"))
    assert lit[0] == "#p-ring"
    assert page.select(".causes figcaption")[0].text == "Marked: the heating ring around the fan, behind the back wall."


def test_the_drawing_has_every_part_a_cause_can_name(client):
    page = read_page(client.get("/?region=gb-eng"))
    assert [part for part in PARTS if not page.select(f"#oven #p-{part}")] == []
