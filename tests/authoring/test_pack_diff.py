"""The same people through two packs: who ends differently, and because of what."""

from dataclasses import replace
from random import Random

import pytest

from tests.builders import ANYWHERE, FAULTS, OBSERVATIONS, RED_FLAGS, TASKS, by_id, electric_oven, make_pack
from triage.authoring import pack_diff
from triage.authoring.endings import Checks
from triage.authoring.pack_diff import SEVERAL, compare, statements_of
from triage.authoring.simulated_users import draw_user
from triage.engine.model import compile_model
from triage.engine.pack import Level

OLD = make_pack()
CHECKS = 120


@pytest.fixture(autouse=True)
def one_process(monkeypatch):
    monkeypatch.setattr(pack_diff, "_processors", lambda: 1)


def test_a_pack_compared_with_itself_has_no_difference_and_is_not_walked():
    done = []
    found = compare(OLD, make_pack(), ANYWHERE, CHECKS, 1, done.append)
    assert (found.changes, found.differences, found.traced, done) == ((), (), 0, [])


def test_a_flag_that_comes_to_end_the_check_changes_the_checks_that_raise_it():
    """It does so for everybody who says so and whose check was not at its end before; what "none of these" rules out
    on the danger page changes with it, so a few others move as well, but never into its danger."""
    new = make_pack(red_flags=RED_FLAGS | by_id(replace(RED_FLAGS["caution-flash"], level=Level.STOP)))
    found = compare(OLD, new, ANYWHERE, CHECKS, 1)
    flashes = [d for d in found.differences if d.statements["sparks"] == "one-flash"]
    assert flashes
    for difference in flashes:
        assert difference.new.ending.band == "make-safe"
        assert difference.new.ending.flags == ("caution-flash",)
    assert all("caution-flash" not in d.new.ending.flags for d in found.differences if d not in flashes)
    assert list(found.groups()) == ["red flag caution-flash"]
    assert found.traced == len(found.differences)


def test_every_difference_is_one_when_walked_again_and_nobody_is_left_out():
    """Brute force: every person drawn again and walked through both packs by hand."""
    new = make_pack(faults=FAULTS | by_id(replace(FAULTS["lamp-failed"], calls_per_1000=300.0)))
    found = compare(OLD, new, ANYWHERE, CHECKS, 3)
    old_checks, new_checks = Checks(OLD, ANYWHERE), Checks(new, ANYWHERE)
    differ = []
    for person in range(CHECKS):
        told = statements_of(draw_user(compile_model(OLD, ANYWHERE), Random(f"3, person {person}")), new)
        if old_checks.walk(told).ending != new_checks.walk(told).ending:
            differ.append(person)
    assert differ
    assert sorted(d.person for d in found.differences) == differ


def test_two_changes_are_told_apart_by_who_they_concern():
    new = make_pack(
        red_flags=RED_FLAGS | by_id(replace(RED_FLAGS["caution-flash"], level=Level.STOP)),
        tasks={name: task for name, task in TASKS.items() if name != "heat-it"},
    )
    groups = compare(OLD, new, ANYWHERE, CHECKS, 1).groups()
    assert set(groups) <= {"red flag caution-flash", "task heat-it", "red flag caution-flash or task heat-it"}
    assert all(d.kinds == ("tasks",) for d in groups["task heat-it"])
    assert any("band" in d.kinds for d in groups["red flag caution-flash"])


def test_what_no_change_alone_brings_about_is_said(monkeypatch):
    monkeypatch.setattr(pack_diff, "trials", lambda _old, _new, _found: ())
    new = make_pack(tasks={name: task for name, task in TASKS.items() if name != "heat-it"})
    assert list(compare(OLD, new, ANYWHERE, CHECKS, 1).groups()) == [SEVERAL]


def test_people_answer_a_new_question_from_its_own_table_and_keep_their_words_for_the_old_ones():
    asked = replace(OBSERVATIONS["lamp-state"], id="lamp-again", answer_probabilities=((1.0, 0.0), (0.0, 1.0)))
    strange = replace(OBSERVATIONS["lamp-state"], id="strange", reports="arcing", options=("a", "b"))
    new = make_pack(
        observations=OBSERVATIONS | by_id(asked, replace(strange, answer_probabilities=((1.0, 0.0), (1.0, 0.0))))
    )
    model, dice = compile_model(OLD, ANYWHERE), Random("new question")
    for _ in range(60):
        household = draw_user(model, dice)
        told = statements_of(household, new)
        truth = ("works", "out")[household.levels["lamp"]]
        assert told["lamp-again"] in {truth, "cant-tell"}
        assert told["strange"] in {"a", "cant-tell"}
        assert {name: told[name] for name in OBSERVATIONS} == household.given


def test_the_people_do_not_depend_on_how_the_work_is_shared(monkeypatch):
    new = replace(
        electric_oven(),
        limits=replace(electric_oven().limits, max_questions=3),
    )
    alone = compare(electric_oven(), new, ANYWHERE, 24, 1)
    monkeypatch.setattr(pack_diff, "_processors", lambda: 2)
    monkeypatch.setattr(pack_diff, "BATCH", 12)
    shared = compare(electric_oven(), new, ANYWHERE, 24, 1)
    assert alone.differences
    assert shared == alone
