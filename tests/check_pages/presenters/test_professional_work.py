"""Skilled work is named with its reason and its person, never with its steps."""

import pytest

from tests.household.checks_done import answers_of, at
from triage.check_pages.presenters.professional_work import (
    MAX_JOBS,
    PREPARATION,
    local_rules,
    person_label,
    professional_jobs,
)
from triage.jobsheet.sentences import sentence


@pytest.mark.parametrize(
    ("region", "who", "person"),
    [
        ("gb-eng", "technician", "an appliance engineer"),
        ("gb-eng", "electrician", "a registered electrician"),
        ("us", "electrician", "a licensed electrician"),
        ("us", "network-operator", "the electric utility"),
        ("gb-eng", "householder", "an appliance engineer"),
    ],
)
def test_a_person_is_called_what_they_are_called_there(check_request, region, who, person):
    assert person_label(check_request(f"/?region={region}"), who) == person


def test_jobs_are_named_once_with_why_and_who(check_request):
    seen = check_request(at("/check/", answers_of("fan-element-open", "no-heat")))
    jobs = professional_jobs(seen, seen.step)
    assert 1 <= len(jobs) <= MAX_JOBS
    assert len({job.what for job in jobs}) == len(jobs)
    assert jobs[0].why == "It sits behind a fixed panel with live parts."


def test_nothing_skilled_is_named_where_nothing_is_wrong(check_request):
    seen = check_request(at("/check/", answers_of("normal-fan-run-on", "fan-after")))
    assert professional_jobs(seen, seen.step) == []


def test_local_rules_stand_first_and_the_law_on_such_work_after_them(check_request):
    seen = check_request(at("/check/", answers_of("fan-element-open", "no-heat")))
    assert local_rules(seen, seen.step) == f"{seen.region.local_line} {seen.region.appliance_inside}"


def test_nothing_has_to_be_opened_or_moved_to_be_ready():
    lines = [sentence("preparation", item=item) for item in PREPARATION]
    assert len(set(lines)) == len(PREPARATION)
    assert any("as the oven stands" in line for line in lines)
    assert any("Open and move nothing" in line for line in lines)
