"""Thousands of checks by simulated people: calibrated where the pack is right, and the same for the same seed."""

from dataclasses import replace
from math import sqrt
from random import Random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sklearn.metrics import brier_score_loss

from tests.builders import ANYWHERE, make_pack
from triage.authoring import simulation
from triage.authoring.cases import Expected
from triage.authoring.check_runner import CheckRunner
from triage.authoring.simulated_users import AnswerModel, draw_user
from triage.authoring.simulation import BATCH, Job, World, check_of, run_batch, simulate
from triage.engine import Band

SURE = AnswerModel(0.0, {"memory": 0.0, "look": 0.0, "trial": 0.0})
KITS = {"element-open": frozenset({"element"}), "board-dead": frozenset({"board", "fuse"})}


def plain_pack(**calls):
    """Without the one question whose "can't tell" would say something about the kind of oven."""
    pack = make_pack()
    asked = {name: o for name, o in pack.observations.items() if name != "code-stays"}
    faults = {
        name: replace(f, calls_per_1000=calls.get(name.replace("-", "_"), f.calls_per_1000))
        for name, f in pack.faults.items()
    }
    return replace(pack, observations=asked, faults=faults)


def findings(pack, count, seed, habits=SURE):
    walk, dice = CheckRunner(pack, ANYWHERE), Random(seed)
    return [check_of(walk, draw_user(walk.model, dice, habits), "one")[1] for _ in range(count)]


rates = st.floats(0.5, 80.0)


@settings(max_examples=6, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(rates, rates, rates, st.integers(0, 10**6))
def test_checks_drawn_from_the_pack_itself_are_calibrated(element, board, lamp, seed):
    """Brier: the score is what the stated chances themselves promise. Reliability: in each third of the stated
    chances as many are right as was said. Both within five standard deviations."""
    pack = plain_pack(element_open=element, board_dead=board, lamp_failed=lamp)
    told = [(f.right_job, f.leading_probability) for f in findings(pack, 400, seed)]
    right, stated = zip(*told, strict=True)
    promised = sum(p * (1 - p) for p in stated)
    spread = sqrt(sum(p * (1 - p) * (1 - 2 * p) ** 2 for p in stated))
    brier = brier_score_loss(right, stated, pos_label=True) * len(told)
    assert abs(brier - promised) <= 5 * spread + 1e-6
    told.sort(key=lambda pair: pair[1])
    for third in (told[:133], told[133:266], told[266:]):
        sure = sqrt(sum(p * (1 - p) for _, p in third))
        assert abs(sum(was - p for was, p in third)) <= 5 * sure + 1e-6


def test_where_the_pack_is_off_it_states_more_than_it_keeps():
    """The yardstick above can fail: people who answer wrong one time in three."""
    told = findings(plain_pack(), 600, 5, AnswerModel(0.0, SURE.unsure, error_rate=0.33))
    short = sum(f.leading_probability - f.right_job for f in told)
    assert short > 5 * sqrt(sum(f.leading_probability * (1 - f.leading_probability) for f in told))


def test_the_result_is_the_same_on_one_processor_and_on_more(monkeypatch):
    asked = (make_pack(), ANYWHERE, KITS, World(AnswerModel(error_rate=0.1), 2.0, weigh=True), BATCH + 30, 3)
    shared = simulate(*asked)
    monkeypatch.setattr(simulation.os, "cpu_count", lambda: 1)
    assert simulate(*asked) == shared
    assert shared.figures.cases == BATCH + 30
    assert simulate(*asked[:-1], 4) != shared


def test_a_person_who_waits_hears_of_every_batch(monkeypatch):
    monkeypatch.setattr(simulation.os, "cpu_count", lambda: 1)
    heard = []
    simulate(make_pack(), ANYWHERE, {}, World(), 2 * BATCH + 1, 1, heard.append)
    assert heard == [BATCH, 2 * BATCH, 2 * BATCH + 1]


@pytest.fixture(scope="module")
def world():
    """One world, small enough for one process."""
    return simulate(make_pack(), ANYWHERE, KITS, World(weigh=True), BATCH, 1)


def test_what_is_confused_adds_up_to_what_is_not_right(world):
    wrong = world.figures.cases - world.figures.job_first.count
    assert sum(number for _, _, number in world.confused) == wrong
    assert all(true != led for true, led, _ in world.confused)
    assert sum(world.families.values()) == BATCH
    assert [number for *_, number in world.confused] == sorted((n for *_, n in world.confused), reverse=True)


def test_numbers_are_weighed_only_where_that_is_asked_for(world):
    assert {cost.number[0] for cost in world.costs} == {"call rate", "effect", "trust"}
    assert simulate(make_pack(), ANYWHERE, KITS, World(), 20, 1).costs == ()


def test_only_checks_with_parts_to_bring_count_for_the_first_visit(world):
    assert 0 < world.first_visit.count < world.first_visit.of < BATCH
    nothing = simulate(make_pack(), ANYWHERE, {}, World(), 20, 1).first_visit
    assert nothing.of == 0
    one_part_for_both = dict.fromkeys(KITS, frozenset({"part"}))
    easier = simulate(make_pack(), ANYWHERE, one_part_for_both, World(), BATCH, 1).first_visit
    assert easier.of == world.first_visit.of
    assert easier.count > world.first_visit.count


def test_danger_told_is_make_safe_whatever_the_fault():
    walk, dice = CheckRunner(make_pack(), ANYWHERE), Random(2)
    people = [draw_user(walk.model, dice) for _ in range(200)]
    found = [(person, check_of(walk, person, "one")[1]) for person in people]
    dangers = [finding for person, finding in found if person.danger_page()[0] != "danger"]
    assert dangers
    assert {finding.expected.bands for finding in dangers} == {(Band.MAKE_SAFE,)}
    for person, finding in found:
        assert finding.expected == Expected(person.faults, finding.expected.bands)


def test_a_batch_in_a_disturbed_world_has_a_truth_of_its_own():
    knowledge = simulation.pickle.dumps((make_pack(), ANYWHERE, KITS))
    jobs = [Job(knowledge, World(SURE, off), "same dice", 60, False) for off in (1.0, 8.0)]
    plain, off = (run_batch(job) for job in jobs)
    assert plain.families != off.families
    assert run_batch(jobs[1]).findings == off.findings
