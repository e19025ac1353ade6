"""A whole check, from nothing said to advice: which step comes when, and what holds over every trail."""

from dataclasses import replace

import pytest
from hypothesis import given, settings, strategies

from tests.builders import ANYWHERE, electric_oven, make_pack
from tests.engine.trails import flagged_choices, forged_trails, some, trails
from triage.engine.answers import AnswerProblem
from triage.engine.check import Emergency, OutOfScope, Question, Result, run_check
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN, Band, Limits

SMALL, OVEN = make_pack(), electric_oven()
PACKS = {"small": SMALL, "electric oven": OVEN}
SCREENED = (SCREEN, NONE_OF_THESE)

every_pack = pytest.mark.parametrize("pack", PACKS.values(), ids=PACKS)


def after(*trail, pack=SMALL):
    return run_check(pack, ANYWHERE, trail).step


def walk(pack, answer=CANT_TELL):
    """Answers every question alike and gives back the trail with the last step."""
    trail = []
    while isinstance(step := run_check(pack, ANYWHERE, trail).step, Question):
        trail.append((step.observation, NONE_OF_THESE if step.observation == SCREEN else answer))
    return trail, step


def test_the_danger_page_comes_first():
    assert after().observation == SCREEN
    assert after(("complaint", "stays-cold"), ("heats", "less")).observation == SCREEN


def test_after_the_danger_page_the_question_most_worth_asking_is_put():
    step = after(SCREENED)
    assert isinstance(step, Question)
    assert (step.observation, step.number, step.max_questions) == ("heats", 1, SMALL.limits.max_questions)


def test_questions_are_numbered_and_what_the_complaint_said_is_free():
    trail = [("complaint", "stays-cold"), ("heats", "no-heat"), SCREENED]
    assert after(*trail).number == 1
    assert after(*trail, ("lamp-state", CANT_TELL)).number == 2


def test_the_start_gives_advice_at_last_without_asking_anything_twice():
    trail, step = walk(replace(SMALL, limits=Limits(max_questions=40, stop_probability=1.0, min_bits=0.0)))
    assert isinstance(step, Result)
    assert len(dict(trail)) == len(trail)


@every_pack
def test_a_person_who_can_tell_nothing_still_gets_advice(pack):
    trail, step = walk(pack)
    assert isinstance(step, Result)
    assert len(trail) <= pack.limits.max_questions + 1
    assert run_check(pack, ANYWHERE, trail).problems == ()


def test_a_flag_ends_the_questions_even_before_the_danger_page():
    step = after(("shock", "felt-one"))
    assert isinstance(step, Emergency)
    assert [flag.id for flag in step.flags] == ["electric-shock"]
    assert step.verdict.band is Band.MAKE_SAFE
    assert step.follow_up_question == "heats"


def test_a_caution_goes_on_and_stands_on_the_advice():
    trail, step = walk(SMALL)
    step = after(*trail, ("pane", "loose"))
    assert isinstance(step, Result)
    assert [flag.id for flag in step.cautions] == ["loose-pane"]
    assert step.verdict.band.severity >= Band.QUALIFIED.severity


def test_an_oven_this_check_is_not_about_is_shown_the_way_out():
    step = after(SCREENED, ("fuel", "gas"))
    assert isinstance(step, OutOfScope)
    assert step.reason == "gas-oven"


def test_a_danger_outranks_the_way_out():
    assert isinstance(after(("fuel", "gas"), ("shock", "felt-one")), Emergency)


def test_what_is_wrong_with_the_answers_stands_in_the_check():
    assert run_check(SMALL, ANYWHERE, [SCREENED, ("no-such", "yes")]).problems == (
        AnswerProblem("unknown-question", "no-such"),
    )


@every_pack
@some
@given(wishes=strategies.data())
def test_the_same_trail_gives_an_equal_step(pack, wishes):
    trail = wishes.draw(forged_trails(pack, 6))
    assert run_check(pack, ANYWHERE, trail).step == run_check(pack, ANYWHERE, iter(trail)).step


@every_pack
@some
@given(wishes=strategies.data())
def test_taking_an_answer_back_restores_the_earlier_step(pack, wishes):
    trail = wishes.draw(trails(pack, 5))
    before = run_check(pack, ANYWHERE, trail[:-1]).step
    assert run_check(pack, ANYWHERE, trail).step
    assert run_check(pack, ANYWHERE, trail[:-1]).step == before


@every_pack
@some
@given(wishes=strategies.data())
def test_the_order_of_the_answers_never_changes_the_step(pack, wishes):
    trail = wishes.draw(trails(pack, 5))
    shuffled = wishes.draw(strategies.permutations(trail))
    assert outcome(run_check(pack, ANYWHERE, trail).step) == outcome(run_check(pack, ANYWHERE, shuffled).step)


def outcome(step):
    """A step without what rightly depends on the order: the trail itself and the weight of each answer."""
    if isinstance(step, Question):
        return step.observation, step.number
    if isinstance(step, OutOfScope):
        return (step.reason,)
    verdict = step.verdict
    causes = [(cause.fault, cause.chance) for cause in verdict.causes]
    return type(step), verdict.band, verdict.family, causes, verdict.alike, verdict.also_check


@settings(deadline=None, max_examples=1500)
@given(trail=forged_trails(SMALL, 40))
def test_no_trail_of_a_small_pack_is_ever_too_much(trail):
    holds_over_any_trail(SMALL, trail)


@settings(deadline=None, max_examples=2000)
@given(trail=forged_trails(OVEN))
def test_no_trail_of_the_electric_oven_is_ever_too_much(trail):
    holds_over_any_trail(OVEN, trail)


@pytest.mark.parametrize("length", [50, 119, 120, 121, 2000])
def test_no_trail_is_too_long(length):
    known = [(o.id, option) for o in OVEN.observations.values() for option in o.options]
    trail = [known[i % len(known)] for i in range(length)]
    holds_over_any_trail(OVEN, trail)


def holds_over_any_trail(pack, trail):
    """What must be true of the step that follows any trail at all."""
    check = run_check(pack, ANYWHERE, trail)
    step = check.step
    flags = {pack.red_flags[f] for o, a in check.answers.items() if (f := flag_of(pack, o, a))}
    if any(flag.level.ends_check for flag in flags):
        assert isinstance(step, Emergency)
        assert set(step.flags) == flags
        assert list(step.flags) == sorted(flags, key=lambda flag: flag.rank)
        assert step.verdict.band is Band.MAKE_SAFE
        assert step.follow_up_question is None or pack.observations[step.follow_up_question].method == "memory"
    elif isinstance(step, Question):
        assert step.observation not in check.answers
    elif isinstance(step, Result):
        assert set(step.cautions) == flags
        assert all(task.competence == "ordinary" for task in step.tasks)
        assert not (step.tasks and step.verdict.band is Band.MAKE_SAFE)
    else:
        assert isinstance(step, OutOfScope)


def flag_of(pack, observation, answer):
    return pack.observations[observation].flags.get(answer) if observation in pack.observations else None


@every_pack
@settings(deadline=None, max_examples=500)
@given(wishes=strategies.data())
def test_a_red_flag_always_makes_it_safe_whatever_else_is_in_the_trail(pack, wishes):
    observation, option = wishes.draw(strategies.sampled_from(flagged_choices(pack, ends_check=True)))
    others = [
        pair for pair in wishes.draw(forged_trails(pack, 6)) if pair[0] != observation or not flag_of(pack, *pair)
    ]
    place = wishes.draw(strategies.integers(0, len(others)))
    step = run_check(pack, ANYWHERE, [*others[:place], (observation, option), *others[place:]]).step
    assert isinstance(step, Emergency)
    assert pack.observations[observation].flags[option] in {flag.id for flag in step.flags}


@every_pack
def test_every_sign_of_the_danger_page_makes_it_safe_or_stays_as_a_caution(pack):
    for flag in pack.red_flags.values():
        for sign in flag.signs:
            step = run_check(pack, ANYWHERE, [sign]).step
            if flag.level.ends_check:
                assert isinstance(step, Emergency)
                assert flag in step.flags
            else:
                assert isinstance(step, Question)


def test_an_unfinished_check_comes_to_what_is_known_so_far():
    check = run_check(SMALL, ANYWHERE, [("complaint", "stays-cold"), SCREENED])
    assert isinstance(check.step, Question)
    assert isinstance(check.conclusion(), Result)


def test_what_ended_is_its_own_conclusion():
    check = run_check(SMALL, ANYWHERE, [("shock", "felt-one")])
    assert isinstance(check.step, Emergency)
    assert check.conclusion() is check.step
