"""Reading a trail: what is kept, what is set aside, and the reason given for each."""

from dataclasses import replace

import pytest
from hypothesis import given, strategies

from tests.builders import make_pack
from tests.engine.trails import forged_trails, trails
from triage.engine.answers import MAX_ANSWERS, MAX_ID_LENGTH, AnswerProblem, applies, parse_answers, ruled_out
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN

PACK = make_pack()
LETTERS = ("screen-shows", "letters")


def read(*pairs):
    return parse_answers(PACK, pairs)


def test_an_empty_trail_reads_as_nothing_at_all():
    assert (dict(read().answers), read().problems) == ({}, ())


def test_answers_are_kept_in_the_order_given():
    trail = [("heats", "less"), (SCREEN, NONE_OF_THESE), ("control", CANT_TELL)]
    reading = read(*trail)
    assert list(reading.answers.items()) == trail
    assert reading.problems == ()


@pytest.mark.parametrize(
    ("pair", "problem"),
    [
        (("no-such", "less"), AnswerProblem("unknown-question", "no-such")),
        (("", ""), AnswerProblem("unknown-question", "")),
        (("heats", "no-such"), AnswerProblem("unknown-answer", "heats", "no-such")),
        (("heats", ""), AnswerProblem("unknown-answer", "heats", "")),
        ((SCREEN, "sparks"), AnswerProblem("unknown-answer", SCREEN, "sparks")),
        ((SCREEN, CANT_TELL), AnswerProblem("unknown-answer", SCREEN, CANT_TELL)),
        (("heats-well", "yes"), AnswerProblem("retired", "heats-well")),
        (("code-stays", "stays"), AnswerProblem("out-of-place", "code-stays", "stays")),
    ],
)
def test_an_answer_that_does_not_hold_is_named_with_its_reason_and_the_others_stay(pair, problem):
    reading = read(("lamp-state", "out"), pair)
    assert reading.problems == (problem,)
    assert reading.answers == {"lamp-state": "out"}


def test_an_absurdly_long_id_is_cut_in_the_problem():
    (problem,) = read(("q" * 5000, "a")).problems
    assert problem.observation == "q" * MAX_ID_LENGTH


def test_the_same_answer_twice_is_one_answer():
    reading = read(("heats", "less"), ("heats", "less"))
    assert (reading.answers, reading.problems) == ({"heats": "less"}, ())


def test_two_different_answers_to_one_question_are_a_contradiction_and_it_is_open_again():
    reading = read(("heats", "less"), ("lamp-state", "out"), ("heats", "normal"))
    assert reading.answers == {"lamp-state": "out"}
    assert reading.problems == (AnswerProblem("contradiction", "heats"),)


def test_of_contradicting_answers_the_one_with_the_gravest_flag_stands():
    reading = read(("sparks", "no-sparks"), ("sparks", "one-flash"), ("sparks", "bright-spot"))
    assert reading.answers == {"sparks": "bright-spot"}
    assert reading.problems == (AnswerProblem("contradiction", "sparks"),)


def test_a_flag_that_ends_the_check_outranks_a_caution_whatever_the_order_of_the_pack():
    first = replace(PACK.red_flags["caution-flash"], rank=-1)
    pack = make_pack(red_flags={**PACK.red_flags, "caution-flash": first})
    reading = parse_answers(pack, [("sparks", "one-flash"), ("sparks", "bright-spot")])
    assert reading.answers == {"sparks": "bright-spot"}


def with_question(name, pack=PACK, **changes):
    changed = replace(pack.observations[name], **changes)
    return replace(pack, observations={**pack.observations, name: changed})


def test_an_answer_to_a_question_that_needs_another_kind_of_oven_is_set_aside():
    reading = read(("control", "electronic"), ("dial-turns", "slips"))
    assert reading.answers == {"control": "electronic"}
    assert reading.problems == (AnswerProblem("out-of-place", "dial-turns", "slips"),)


def test_setting_one_answer_aside_sets_aside_what_hangs_on_it():
    gated = with_question("screen-shows", requires_variant={"control": frozenset({"electronic"})})
    pack = with_question("code-stays", gated, requires_variant={})
    reading = parse_answers(pack, [("code-stays", "stays"), LETTERS, ("control", "mechanical")])
    assert reading.answers == {"control": "mechanical"}
    assert [problem.observation for problem in reading.problems] == ["screen-shows", "code-stays"]


def test_a_question_that_hangs_on_another_may_be_answered_before_it():
    assert read(("code-stays", "stays"), LETTERS).problems == ()


def test_a_flagged_answer_is_never_set_aside_as_out_of_place():
    pack = with_question("sparks", requires_answers={"lamp-state": frozenset({"out"})})
    assert parse_answers(pack, [("sparks", "bright-spot")]).answers == {"sparks": "bright-spot"}


def test_a_trail_that_is_too_long_is_cut_and_says_so_once():
    reading = read(*[("lamp-state", "out")] * MAX_ANSWERS, *[("heats", "less")] * 1000)
    assert reading.problems == (AnswerProblem("too-many", ""),)
    assert reading.answers == {"lamp-state": "out"}


def test_a_danger_sign_behind_a_long_trail_is_still_read():
    padding = [("no-such", str(number)) for number in range(MAX_ANSWERS + 30)]
    assert read(*padding, ("sparks", "bright-spot")).answers == {"sparks": "bright-spot"}


@given(wishes=strategies.data())
def test_what_is_kept_depends_on_the_answers_and_not_on_their_order(wishes):
    trail = wishes.draw(forged_trails(PACK))
    shuffled = wishes.draw(strategies.permutations(trail))
    one, other = parse_answers(PACK, trail), parse_answers(PACK, shuffled)
    assert one.answers == other.answers
    assert sorted(map(repr, one.problems)) == sorted(map(repr, other.problems))


@given(trail=forged_trails(PACK, 30))
def test_what_is_kept_reads_the_same_again_without_a_problem(trail):
    kept = parse_answers(PACK, trail).answers
    again = parse_answers(PACK, kept.items())
    assert list(again.answers.items()) == list(kept.items())
    assert again.problems == ()


@given(trail=trails(PACK))
def test_every_answer_is_kept_or_has_a_problem(trail):
    reading = parse_answers(PACK, trail)
    named = {problem.observation for problem in reading.problems}
    assert {observation for observation, _ in trail} == set(reading.answers) | named
    assert not named & set(reading.answers)


def test_a_question_exists_once_the_answers_it_hangs_on_were_given():
    question = PACK.observations["code-stays"]
    assert not applies(question, {})
    assert not applies(question, {"screen-shows": "clock-time"})
    assert applies(question, {"screen-shows": "letters"})


@pytest.mark.parametrize(
    ("answers", "out"), [({}, False), ({"control": CANT_TELL}, False), ({"control": "electronic"}, True)]
)
def test_only_a_stated_kind_rules_something_out(answers, out):
    assert ruled_out({"control": frozenset({"mechanical"})}, answers) is out
