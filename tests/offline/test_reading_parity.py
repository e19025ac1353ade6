"""A reading taken offline: its form, what is wrong in it, what comes of it are the site's own, byte for byte."""

from collections import Counter

from tests.offline.phone_pages import differences_from_the_site
from tests.offline.reading_addresses import FIELDS, forged_forms, pages_of_tasks, pages_of_their_own
from triage.check_pages.presenters.readings.form import measured_by
from triage.knowledge.library import library

A_PLACE = 24
A_TASK = 8
SEED = 61
MOST_SHOWN = 3
TOLD = ("That is short of the set heat", "That is past the set", "more readings than can be", "silent from switch")


def test_pages_of_readings_are_the_sites_own(page, record_property):
    requests, found, apart = differences_from_the_site(page, pages_of_their_own(A_PLACE, SEED))
    record_property("states", len(found))
    assert "\n".join(apart[:MOST_SHOWN]) == ""
    kinds = {f"/reading/{kind}/" for kind in FIELDS}
    assert paths_with('class="picture"', requests, found, 40) == kinds
    assert paths_with('class="wrong"', requests, found, 10) == kinds - {"/reading/gasket/"}  # ticks are never wrong
    for words in TOLD:
        assert any(words in answer["html"] for answer in found), words
    assert "/reading/thermometer/" in {r["path"] for r, a in zip(requests, found, strict=True) if onward_of(a)}


def test_forms_on_pages_of_tasks_are_the_sites_own(page, record_property):
    requests, found, apart = differences_from_the_site(page, pages_of_tasks(A_TASK, SEED))
    record_property("states", len(found))
    assert "\n".join(apart[:MOST_SHOWN]) == ""
    tasks = {task.id for task in library().pack.tasks.values() if measured_by(library().pack, task)}
    assert paths_with('class="measured"', requests, found, 10) == {f"/check/task/{task}/" for task in tasks}


def test_forged_forms_get_the_sites_own_pages(page, record_property):
    _, found, apart = differences_from_the_site(page, forged_forms())
    record_property("states", len(found))
    assert "\n".join(apart[:MOST_SHOWN]) == ""
    assert Counter(answer["status"] for answer in found)[404] == 6


def paths_with(mark, requests, found, number):
    """The paths with at least `number` pages that have `mark` in them."""
    paths = zip(requests, found, strict=True)
    times = Counter(request["path"] for request, answer in paths if mark in answer["html"])
    return {path for path, shown in times.items() if shown >= number}


def onward_of(answer):
    """Where the page sends its reader at once, if it does."""
    return answer["headers"].get("HX-Redirect") or answer["headers"].get("Location")
