"""What the answers come to: the band and what may raise it, the causes, what looks alike, what to check besides."""

from dataclasses import replace

import pytest
from hypothesis import assume, given, strategies

from tests.builders import ANYWHERE, electric_oven, make_pack
from tests.engine.trails import fitting_answers, flagged_choices, many, some
from triage.engine.advice import MOST_CAUSES, SMALLEST_CAUSE, conclude, decide_band, tasks_for
from triage.engine.answers import parse_answers
from triage.engine.belief import infer_belief
from triage.engine.check import run_check
from triage.engine.model import compile_model
from triage.engine.pack import NONE_OF_THESE, SCREEN, Band
from triage.engine.safety import raised_flags

SMALL, OVEN = make_pack(), electric_oven()
PACKS = {"small": SMALL, "electric oven": OVEN}
SCREENED = {SCREEN: NONE_OF_THESE}

every_pack = pytest.mark.parametrize("pack", PACKS.values(), ids=PACKS)


def verdict_on(answers, pack=SMALL):
    return conclude(infer_belief(compile_model(pack, ANYWHERE), answers), answers, raised_flags(pack, answers))


def band_of(pack, trail):
    return run_check(pack, ANYWHERE, trail).conclusion().verdict.band


@pytest.mark.parametrize(
    ("answers", "band"),
    [
        ({"heats": "no-heat", "control": "mechanical"}, Band.QUALIFIED),
        ({"lamp-state": "out", "heats": "normal"}, Band.SELF_CHECK),
        (
            {"heats": "normal", "lamp-state": "works", "complaint": "too-slow", "sparks": "no-sparks"},
            Band.QUALIFIED,
        ),
        ({"sparks": "bright-spot"}, Band.MAKE_SAFE),
        ({"shock": "felt-one"}, Band.MAKE_SAFE),
        ({"lamp-state": "out", "heats": "normal", "pane": "loose"}, Band.QUALIFIED),
    ],
)
def test_the_band_follows_the_belief_where_no_rule_speaks(answers, band):
    assert verdict_on(answers).band is band


def test_normal_behaviour_leads_to_the_mildest_band():
    often = replace(SMALL.faults["normal-preheat"], calls_per_1000=900.0)
    pack = make_pack(faults={**SMALL.faults, "normal-preheat": often})
    assert verdict_on({"heats": "normal"}, pack).band is Band.NORMAL


def test_a_belief_that_something_is_dangerous_is_enough_to_make_it_safe():
    often = replace(SMALL.faults["element-arcing"], calls_per_1000=900.0)
    pack = make_pack(faults={**SMALL.faults, "element-arcing": often})
    assert verdict_on({}, pack).band is Band.MAKE_SAFE


@every_pack
@some
@given(wishes=strategies.data())
def test_a_flag_that_ends_the_check_always_makes_it_safe(pack, wishes):
    answers = wishes.draw(fitting_answers(pack))
    observation, option = wishes.draw(strategies.sampled_from(flagged_choices(pack, ends_check=True)))
    told = {**answers, observation: option}
    belief = infer_belief(compile_model(pack, ANYWHERE), told)
    assert decide_band(belief, told, raised_flags(pack, told)) is Band.MAKE_SAFE


@every_pack
@some
@given(wishes=strategies.data())
def test_a_caution_keeps_the_band_from_falling_below_qualified(pack, wishes):
    answers = wishes.draw(fitting_answers(pack))
    observation, option = wishes.draw(strategies.sampled_from(flagged_choices(pack, ends_check=False)))
    told = dict(parse_answers(pack, {**answers, observation: option}.items()).answers)
    assert verdict_on(told, pack).band.severity >= Band.QUALIFIED.severity


@every_pack
@many
@given(wishes=strategies.data())
def test_a_further_red_flag_never_lowers_the_band(pack, wishes):
    answers = wishes.draw(fitting_answers(pack, 5))
    told = {*flagged_choices(pack, ends_check=True), *flagged_choices(pack, ends_check=False)}
    further = sorted(pair for pair in told if pair[0] not in answers)
    assume(further)
    flagged = wishes.draw(strategies.sampled_from(further))
    before, after = band_of(pack, answers.items()), band_of(pack, [*answers.items(), flagged])
    assert after.severity >= before.severity


def test_a_caution_that_weakens_the_odds_of_a_danger_does_not_lower_make_safe():
    """Odds alone made it safe here; letters on the screen speak for the board, and are a danger more, not less."""
    common = {"element-arcing": 15.0, "board-dead": 100.0}
    pack = make_pack(
        faults={f.id: replace(f, calls_per_1000=common.get(f.id, f.calls_per_1000)) for f in SMALL.faults.values()},
        fault_pairs=(),
        observations={
            **SMALL.observations,
            "sparks": replace(SMALL.observations["sparks"], flags={}),
            "screen-shows": replace(SMALL.observations["screen-shows"], flags={"letters": "loose-pane"}),
        },
    )
    answers = {"sparks": "bright-spot"}
    assert verdict_on(answers, pack).band is Band.MAKE_SAFE
    assert verdict_on({**answers, "screen-shows": "letters"}, pack).band is Band.MAKE_SAFE


@every_pack
@some
@given(wishes=strategies.data())
def test_the_causes_are_the_likeliest_few_with_a_weight_for_every_answer(pack, wishes):
    answers = wishes.draw(fitting_answers(pack))
    verdict = verdict_on(answers, pack)
    chances = [cause.chance for cause in verdict.causes]
    assert 1 <= len(chances) <= MOST_CAUSES
    # Probabilities that agree to nine digits are a tie, which the pack's order decides (`greatest_first`).
    assert chances == pytest.approx(sorted(chances, reverse=True), rel=1e-9)
    assert all(chance >= SMALLEST_CAUSE for chance in chances) or len(chances) == 1
    assert all([w.observation for w in cause.weights] == list(answers) for cause in verdict.causes)


def test_the_family_named_is_the_likeliest_one():
    verdict = verdict_on({"heats": "less", "control": "mechanical"})
    belief = infer_belief(compile_model(SMALL, ANYWHERE), {"heats": "less", "control": "mechanical"})
    assert verdict.family == max(belief.families, key=belief.families.get)


def test_what_cannot_be_told_apart_is_named_with_the_leading_cause_first():
    pack = make_pack(look_alikes=(frozenset({"board-dead", "programmer-not-set"}),))
    verdict = verdict_on({"heats": "no-heat", "control": "electronic"}, pack)
    assert verdict.causes[0].fault == "programmer-not-set"
    assert verdict.alike == ("programmer-not-set", "board-dead")


def test_a_look_alike_that_was_ruled_out_is_not_named():
    assert verdict_on({"heats": "no-heat", "control": "mechanical"}).alike == ("element-open",)


def test_a_cause_that_brings_another_along_names_it_to_be_checked():
    answers = {"sparks": "bright-spot", "screen-shows": "letters"}
    verdict = verdict_on(answers)
    assert verdict.causes[0].fault == "element-arcing"
    assert verdict.also_check == ("board-dead",)


def test_faults_that_only_stand_beside_each_other_by_chance_are_not_named():
    assert verdict_on({"lamp-state": "out", "heats": "normal"}).also_check == ()


def test_nothing_may_be_done_where_the_band_says_make_it_safe():
    answers = {**SCREENED, "heats": "normal", "sparks": "no-sparks"}
    belief = infer_belief(compile_model(SMALL, ANYWHERE), answers)
    assert tasks_for(ANYWHERE, belief, answers, Band.MAKE_SAFE) == ()
    assert tasks_for(ANYWHERE, belief, answers, Band.QUALIFIED) != ()
