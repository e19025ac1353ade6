"""Parts, tools and jobs from YAML, and what their author is told when something is wrong."""

import pytest

from tests.builders import electric_oven
from tests.knowledge.small_packs import SMALL_PACK, copy_of_small_pack, edit, told_about
from triage.engine.repairs import Job, Part
from triage.knowledge.library import library
from triage.knowledge.pack_builder import build_pack

PACK = build_pack(SMALL_PACK)


def test_a_part_has_the_number_its_way_of_being_carried_stands_for():
    assert PACK.parts["board"] == Part("board", False, 0.1)
    assert PACK.parts["tester"] == Part("tester", True, 0.001)


def test_a_job_names_what_it_needs_with_the_numbers_of_its_words():
    assert PACK.jobs["element-open"] == Job(frozenset({"element"}), {"clips": 0.2})
    assert PACK.jobs["board-dead"].one_of == pytest.approx({"board": 0.75 / 1.2, "tester": 0.45 / 1.2})
    assert not PACK.jobs["other"].known


def test_a_fault_that_takes_no_part_has_no_job():
    assert "lamp-failed" not in PACK.jobs


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        (
            "element: {carrying: bag}",
            "element: {carrying: lorry}",
            "3: file, parts, element, carrying: has no 'lorry'. Allowed: bag, dear.",
        ),
        (
            "bag: 0.001",
            "bag: 12",
            "1: file, carrying_costs, bag: must be a number from 0 to 1, not 12. Give one in that range.",
        ),
        (
            "needs: [element]",
            "needs: [lement]",
            "8: jobs, jobs, element-open, needs: has no 'lement'. Allowed: element, clips, board, tester.",
        ),
        (
            "clips: sometimes",
            "clips: perhaps",
            (
                "8: jobs, jobs, element-open, may_need, clips: has no 'perhaps'. "
                "Allowed: almost-always, usually, often, sometimes, rarely, never."
            ),
        ),
        (
            "known: false",
            "known: true",
            "10: jobs, jobs, other: nothing is needed. Name a part, or write known: false.",
        ),
        ("  other: {known: false}\n", "", "7: jobs, jobs: says nothing of other. Say what it takes, or known: false."),
        (
            "other: {known",
            "another: {known",
            "10: jobs, jobs, another: has no 'another'. Allowed: element-open, board-dead, lamp-failed, other.",
        ),
    ],
)
def test_what_is_wrong_is_told(tmp_path, old, new, told):
    folder = copy_of_small_pack(tmp_path)
    edit(folder, "parts", old, new)
    assert f"small_pack/parts.yaml:{told}" in told_about(folder)


def test_every_part_of_the_oven_is_needed_for_something():
    jobs = electric_oven().jobs.values()
    used = {part for job in jobs for part in [*job.needs, *job.may_need, *job.one_of]}
    assert used == set(electric_oven().parts)


def test_every_job_of_the_oven_is_for_a_fault_somebody_may_repair():
    faults = electric_oven().faults
    assert [name for name in electric_oven().jobs if faults[name].price_class == "p0"] == []


def test_every_part_has_a_name_in_every_language():
    for texts in library().texts.values():
        assert list(texts.parts) == list(library().pack.parts)
