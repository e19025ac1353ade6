"""Thousands of pages, opened as a browser does: no rule is broken on any, and no trap is sprung."""

import pytest

from tests.safety.browsing import browse, open_page
from tests.safety.leading_to import trail_to
from tests.safety.page_invariants import the_way_out_is_there
from tests.safety.places import class_named, region_classes
from tests.safety.result import all_together
from triage.engine import NONE_OF_THESE, SCREEN
from triage.knowledge.library import library

REGIONS = list(library().regions)
SUPPLIES = library().pack.variants["supply"].options


@pytest.fixture
def every_page(record_property):
    """A search of pages in all jobs: what it met, with no rule broken on at least so many pages."""

    def search(jobs, least):
        found = all_together(browse, jobs)
        record_property("states", found.states)
        assert found.violations == ""
        assert found.states >= least
        return found

    return search


def test_first_pages_in_every_region(every_page):
    lines = len(library().pack.complaints)
    every_page([("first", region) for region in REGIONS], 2 * lines * len(REGIONS))


def test_the_page_of_every_red_flag_in_every_region_on_every_kind_of_supply(every_page):
    found = every_page([("danger", region) for region in REGIONS], 25 * len(SUPPLIES) * len(REGIONS))
    assert set(found.kinds) == {"Emergency"}


def test_the_page_of_every_two_red_flags(every_page):
    assert {"plug-in", "hard-wired"} <= set(SUPPLIES)
    every_page([("two dangers", "gb-eng", "plug-in"), ("two dangers", "au", "hard-wired")], 500)


def test_every_task_in_every_combination_of_its_gates(every_page):
    places = ("gb-eng", "us", "au")
    removed = {place: class_named(place).region.removed_tasks for place in places}
    trails = {(task, place): trail_to(task, place) for place in places for task in library().pack.tasks}
    assert [key for key, pairs in trails.items() if pairs is None and key[0] not in removed[key[1]]] == []
    jobs = [("task", place, task, pairs or trail_to(task, "gb-eng")) for (task, place), pairs in trails.items()]
    found = every_page(jobs, 800)
    assert set(found.kinds) == set(library().pack.tasks)


def test_pages_of_checks_answered_by_dice(every_page):
    jobs = [("on the way", found.region.id, 7, number) for number, found in enumerate(region_classes())]
    found = every_page(jobs, 800)
    assert found.kinds["Result"] > 60


def test_a_refreshed_part_of_a_page_has_its_way_out_too():
    for pairs in (
        [("complaint", "no-heat")],
        [("smell-type", "gas")],
        [("complaint", "trips"), (SCREEN, NONE_OF_THESE)],
    ):
        whole, part = open_page("gb-eng", pairs), open_page("gb-eng", pairs, headers={"HX-Request": "true"})
        assert len(part.page.select("html")) == 0
        assert the_way_out_is_there(whole) == []
        assert [a.attributes["href"] for a in part.page.select("nav.way-out a")] == [
            a.attributes["href"] for a in whole.page.select("nav.way-out a")
        ]
