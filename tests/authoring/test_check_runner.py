"""A walk asks exactly what the engine asks, kept or not."""

from random import Random

from tests.builders import ANYWHERE, make_pack
from triage.authoring.check_runner import CheckRunner
from triage.authoring.simulated_users import draw_user
from triage.engine import Emergency, Question, infer_belief, run_check


def by_the_engine(pack, trail, answer):
    """The check step by step, with nothing kept."""
    while True:
        check = run_check(pack, ANYWHERE, trail)
        step = check.step
        question = step.observation if isinstance(step, Question) else getattr(step, "follow_up_question", None)
        if question is None:
            return check
        trail.append((question, answer(question)))


def test_every_check_is_the_engines_own_after_danger_too():
    walk, dice, ends = CheckRunner(make_pack(), ANYWHERE), Random(4), []
    for _ in range(60):
        household = draw_user(walk.model, dice)
        walked, alone = household.opening_answers(), household.opening_answers()
        check = walk.run(walked, household.answer)
        assert check == by_the_engine(walk.pack, alone, household.answer)
        assert walked == alone
        ends.append(type(check.step))
    assert Emergency in ends


def test_a_check_walked_again_asks_the_engine_for_its_end_only(monkeypatch):
    walk = CheckRunner(make_pack(), ANYWHERE)
    household = draw_user(walk.model, Random(4))
    first = walk.run(household.opening_answers(), household.answer)
    steps = []
    monkeypatch.setattr(
        "triage.authoring.check_runner.run_check", lambda *asked: steps.append(asked) or run_check(*asked)
    )
    assert walk.run(household.opening_answers(), household.answer) == first
    assert len(steps) == 1


def test_no_more_is_kept_than_fits_and_the_checks_stay_the_same(monkeypatch):
    full, small = CheckRunner(make_pack(), ANYWHERE), CheckRunner(make_pack(), ANYWHERE)
    people = [draw_user(full.model, Random(seed)) for seed in range(20)]
    ends = [full.run(person.opening_answers(), person.answer) for person in people]
    monkeypatch.setattr("triage.authoring.check_runner.MAX_CACHED", 5)
    assert [small.run(person.opening_answers(), person.answer) for person in people] == ends
    assert len(small.asked) == 5 < len(full.asked)


def test_the_chances_before_are_those_of_an_empty_trail():
    walk = CheckRunner(make_pack(), ANYWHERE)
    assert walk.prior_families == dict(infer_belief(walk.model, {}).families)
