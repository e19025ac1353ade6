"""Which question comes next: its worth against full enumeration, what may not be asked, and when to stop."""

from dataclasses import replace

import pytest
from hypothesis import given, strategies

from tests.builders import ANYWHERE, electric_oven, make_pack
from tests.engine.trails import few, fitting_answers
from triage.engine.answers import applies, ruled_out
from triage.engine.belief import infer_belief
from triage.engine.model import compile_model
from triage.engine.next_question import count_asked, follow_up_question, next_question, ranked_questions
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN, Limits

SMALL, OVEN = make_pack(), electric_oven()
EAGER = Limits(max_questions=40, stop_probability=1.0, min_bits=0.0)
SCREENED = {SCREEN: NONE_OF_THESE}


def belief_after(pack, answers):
    return infer_belief(compile_model(pack, ANYWHERE), answers)


def offered(pack, answers):
    return {worth.observation: worth for worth in ranked_questions(belief_after(pack, answers), answers)}


def next_after(pack, answers):
    return next_question(belief_after(pack, answers), answers)


def with_limits(pack, **changes):
    return replace(pack, limits=replace(pack.limits, **changes))


def with_question(name, **changes):
    return make_pack(observations={**SMALL.observations, name: replace(SMALL.observations[name], **changes)})


@pytest.mark.parametrize("pack", [SMALL, OVEN], ids=["small", "electric oven"])
@few
@given(wishes=strategies.data())
def test_only_what_exists_is_safe_and_was_not_asked_may_be_asked(pack, wishes):
    answers = wishes.draw(fitting_answers(pack))
    cautious = any(answers[o] in pack.observations[o].flags for o in answers if o != SCREEN)
    for name in offered(pack, answers):
        question = pack.observations[name]
        assert name not in answers
        assert question.reports is not None
        assert not question.task
        assert applies(question, answers)
        assert not ruled_out(question.requires_variant, answers)
        assert not (question.method == "trial" and cautious)


@pytest.mark.parametrize("pack", [SMALL, OVEN], ids=["small", "electric oven"])
@few
@given(wishes=strategies.data())
def test_the_most_worth_comes_first_and_no_worth_is_negative(pack, wishes):
    answers = wishes.draw(fitting_answers(pack))
    worths = ranked_questions(belief_after(pack, answers), answers)
    assert [w.bits_per_second for w in worths] == sorted((w.bits_per_second for w in worths), reverse=True)
    assert all(w.bits >= 0.0 for w in worths)


@pytest.mark.parametrize("pack", [SMALL, OVEN], ids=["small", "electric oven"])
@few
@given(wishes=strategies.data())
def test_what_is_asked_is_the_most_worth_of_all(pack, wishes):
    """The search by bounds leaves out nothing that could win."""
    answers = wishes.draw(fitting_answers(pack))
    calm = replace(
        pack, limits=EAGER, observations={o.id: replace(o, urgent=False) for o in pack.observations.values()}
    )
    worths = {worth.observation: worth for worth in ranked_questions(belief_after(calm, answers), answers)}
    found = next_after(calm, answers)
    assert (found is None) is (not worths)
    if found:
        assert worths[found].bits_per_second == pytest.approx(
            max(w.bits_per_second for w in worths.values()), abs=1e-12
        )


def test_what_the_danger_page_settled_is_not_asked_again():
    settled = with_question("sparks", flags={"one-flash": "arc-burning", "bright-spot": "arc-burning"})
    assert "sparks" in offered(SMALL, SCREENED)
    assert "sparks" in offered(settled, {})
    assert "sparks" not in offered(settled, SCREENED)


def test_the_effort_of_a_question_speaks_against_it():
    pack = with_question("heats", effort_seconds=3000.0)
    assert next_after(SMALL, SCREENED) == "heats"
    assert next_after(pack, SCREENED) not in {"heats", None}


@pytest.mark.parametrize("effort", [0.0, 1e-10, -1e-10], ids=["equal", "a shade more", "a shade less"])
def test_of_two_questions_worth_the_same_the_packs_first_is_asked(effort):
    """Also where only a last digit tells them apart, as between two machines' logarithms."""
    asked = SMALL.observations["heats"]
    twin = replace(asked, id="twin", effort_seconds=asked.effort_seconds + effort)
    assert next_after(make_pack(observations={**SMALL.observations, "twin": twin}), SCREENED) == "heats"
    assert next_after(make_pack(observations={"twin": twin, **SMALL.observations}), SCREENED) == "twin"


@pytest.mark.parametrize("name", ["complaint", "pane", "fuel", "cold", "supply-off", "did-set-clock", "code-stays"])
def test_the_opening_records_gates_task_outcomes_and_what_does_not_exist_are_not_asked(name):
    assert name not in offered(SMALL, SCREENED)


def test_a_question_appears_with_the_answer_it_hangs_on():
    assert "code-stays" in offered(SMALL, {"screen-shows": "letters"})


def test_a_question_about_a_kind_of_oven_that_was_ruled_out_is_not_asked():
    assert "code-stays" not in offered(SMALL, {"screen-shows": "letters", "control": "mechanical"})


def test_a_question_that_hardly_any_such_oven_can_answer_is_not_asked():
    unlikely = {"control": "mechanical"}
    gated = with_question("lamp-state", requires_variant={"control": frozenset({"electronic"})})
    assert "lamp-state" in offered(gated, {"screen-shows": "letters"})
    assert "lamp-state" not in offered(gated, unlikely)


def test_what_needs_the_oven_to_run_is_left_to_its_task_and_never_put_as_a_question():
    assert SMALL.observations["meter"].method == "trial"
    assert "meter" not in offered(SMALL, {})
    assert "meter" not in offered(SMALL, {"pane": "loose"})
    assert "heats" in offered(SMALL, {"pane": "loose"})


@pytest.mark.parametrize("caution", ["snaps-or-drops", "will-not-open"])
def test_nobody_is_asked_to_look_where_a_caution_forbids_it(caution):
    assert "seal-look" in offered(OVEN, {"complaint": "door", **SCREENED})
    assert "seal-look" not in offered(OVEN, {"complaint": "door", **SCREENED, "door-fit": caution})


def test_an_urgent_question_comes_first_even_when_a_family_is_settled():
    pack = with_limits(with_question("lamp-state", urgent=True), stop_probability=0.0)
    assert next_after(pack, SCREENED) == "lamp-state"
    assert next_after(pack, {**SCREENED, "lamp-state": "out"}) is None


def test_the_questions_end_when_a_family_is_settled():
    leading = next(iter(belief_after(SMALL, SCREENED).families.values()))
    assert next_after(with_limits(SMALL, stop_probability=leading - 0.01), SCREENED) is None
    assert next_after(with_limits(SMALL, stop_probability=leading + 0.01), SCREENED) is not None


def test_the_questions_end_when_the_best_is_not_worth_its_effort():
    best = max(offered(SMALL, SCREENED).values(), key=lambda worth: worth.bits_per_second)
    assert next_after(with_limits(SMALL, min_bits=best.bits - 1e-6), SCREENED) == best.observation
    assert next_after(with_limits(SMALL, min_bits=best.bits + 1e-6), SCREENED) is None


@pytest.mark.parametrize("limit", [1, 2, 3])
def test_the_questions_end_at_the_limit_of_the_pack(limit):
    pack = replace(SMALL, limits=replace(EAGER, max_questions=limit))
    answers = dict(SCREENED)
    while question := next_after(pack, answers):
        answers[question] = CANT_TELL
    assert len(answers) == limit + 1


def test_with_nothing_left_to_ask_the_questions_end():
    answers = dict.fromkeys(SMALL.observations, CANT_TELL)
    assert next_after(replace(SMALL, limits=EAGER), answers) is None


def test_the_complaint_what_it_implied_the_danger_page_and_records_do_not_count():
    answers = {"complaint": "stays-cold", "heats": "no-heat", SCREEN: NONE_OF_THESE, "fuel": "electric"}
    assert count_asked(SMALL, answers) == 0
    assert count_asked(SMALL, {**answers, "heats": "less"}) == 1
    assert count_asked(SMALL, {**answers, "lamp-state": CANT_TELL}) == 1


def test_after_a_red_flag_only_memory_is_asked():
    answers = {"sparks": "bright-spot"}
    eager = replace(SMALL, limits=EAGER)
    asked = []
    while question := follow_up_question(belief_after(eager, answers), answers):
        asked.append(question)
        answers[question] = CANT_TELL
    assert set(asked) == {"heats", "lamp-state"}


def test_after_a_red_flag_the_limit_and_the_worth_hold_as_ever():
    answers = {"sparks": "bright-spot"}
    for limits in (Limits(max_questions=1), Limits(min_bits=1.0)):
        assert follow_up_question(belief_after(replace(SMALL, limits=limits), answers), answers) is None
