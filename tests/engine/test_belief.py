"""What is believed after some answers: sums, order, gates, and the same numbers worked out world by world."""

import pytest
from hypothesis import given, strategies

from tests.builders import ANYWHERE, electric_oven, make_pack
from tests.engine.enumerating import posterior, weighed, worlds_of
from tests.engine.trails import answers_of_one_oven, choices_of, fitting_answers, some, trails
from triage.engine.answers import parse_answers
from triage.engine.belief import infer_belief
from triage.engine.model import compile_model
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN

SMALL, OVEN = make_pack(), electric_oven()
PACKS = {"small": SMALL, "electric oven": OVEN}
WORLDS = worlds_of(SMALL, ANYWHERE)

every_pack = pytest.mark.parametrize("pack", PACKS.values(), ids=PACKS)


def belief_after(pack, answers):
    return infer_belief(compile_model(pack, ANYWHERE), answers)


@every_pack
@some
@given(wishes=strategies.data())
def test_beliefs_sum_to_one(pack, wishes):
    belief = belief_after(pack, wishes.draw(fitting_answers(pack)))
    assert sum(belief.probabilities) == pytest.approx(1.0, abs=1e-12)
    assert sum(belief.families.values()) == pytest.approx(1.0, abs=1e-12)
    assert min(belief.probabilities) >= 0.0


@every_pack
@some
@given(wishes=strategies.data())
def test_the_order_of_the_answers_never_changes_the_belief(pack, wishes):
    trail = wishes.draw(trails(pack))
    shuffled = wishes.draw(strategies.permutations(trail))
    one, other = (belief_after(pack, parse_answers(pack, order).answers) for order in (trail, shuffled))
    assert one.probabilities == other.probabilities


def test_answers_whose_gates_exclude_each_other_are_judged_alike_in_any_order():
    trail = [("screen-shows", "letters"), ("code-stays", "stays"), ("dial-turns", "turns")]
    one, other = (belief_after(SMALL, dict(order)) for order in (trail, trail[::-1]))
    assert one.probabilities == other.probabilities


@every_pack
@some
@given(wishes=strategies.data())
def test_taking_an_answer_back_restores_the_earlier_belief(pack, wishes):
    answers = wishes.draw(fitting_answers(pack))
    before = belief_after(pack, answers)
    observation, answer = wishes.draw(strategies.sampled_from(choices_of(pack)))
    belief_after(pack, {**answers, observation: answer} if observation not in answers else answers)
    assert belief_after(pack, answers).probabilities == before.probabilities


@every_pack
@some
@given(wishes=strategies.data())
def test_not_being_able_to_tell_is_no_evidence(pack, wishes):
    answers = wishes.draw(fitting_answers(pack))
    silent = wishes.draw(strategies.sampled_from([o for o in pack.observations if o not in answers]))
    assert belief_after(pack, {**answers, silent: CANT_TELL}).probabilities == belief_after(pack, answers).probabilities


@pytest.mark.parametrize("observation", [o.id for o in SMALL.observations.values()])
def test_not_being_able_to_tell_after_the_danger_page_takes_nothing_back(observation):
    screened = {SCREEN: NONE_OF_THESE}
    unsure = belief_after(SMALL, {**screened, observation: CANT_TELL})
    assert unsure.probabilities == belief_after(SMALL, screened).probabilities


@some
@given(answers=answers_of_one_oven(SMALL))
def test_the_belief_is_that_of_all_worlds_one_by_one(answers):
    """Variants, gates, given, only, pairs, the vague fault and the danger page, against full enumeration."""
    expected = posterior(weighed(SMALL, WORLDS, answers))
    belief = belief_after(SMALL, answers)
    found = {h.faults: c for h, c in zip(belief.model.hypotheses, belief.probabilities, strict=True)}
    assert found == pytest.approx({faults: expected[faults] for faults in found}, abs=1e-12)


def test_the_danger_page_ticked_none_speaks_against_what_it_shows():
    before, after = belief_after(SMALL, {}), belief_after(SMALL, {SCREEN: NONE_OF_THESE})
    assert after.faults["element-arcing"] < before.faults["element-arcing"] / 1.5


def test_a_fault_alone_and_beside_another_counts_once_each():
    belief = belief_after(SMALL, {})
    alone = [c for h, c in zip(belief.model.hypotheses, belief.probabilities, strict=True) if "lamp-failed" in h.faults]
    assert len(alone) == 2
    assert belief.faults["lamp-failed"] == pytest.approx(sum(alone))


def test_families_and_faults_are_ranked_likeliest_first():
    belief = belief_after(SMALL, {"heats": "less"})
    assert list(belief.families.values()) == sorted(belief.families.values(), reverse=True)
    chances = [belief.faults[fault] for fault in belief.ranking]
    assert chances == sorted(chances, reverse=True)
    assert set(belief.ranking) == set(SMALL.faults)


def test_equal_faults_keep_the_order_of_the_pack():
    sure = belief_after(SMALL, {"control": "mechanical"})
    none_left = [fault for fault in sure.ranking if sure.faults[fault] == 0.0]
    assert none_left == [fault for fault in SMALL.faults if sure.faults[fault] == 0.0]


@every_pack
def test_every_fault_is_alive_while_the_kind_of_oven_is_not_known(pack):
    assert min(belief_after(pack, {SCREEN: NONE_OF_THESE}).faults.values()) > 0.0


@every_pack
def test_a_stated_kind_rules_out_exactly_the_faults_that_cannot_occur_on_it(pack):
    asked = [variant for variant in pack.variants.values() if variant.id in pack.observations]
    assert asked
    for name, option in [(variant.id, option) for variant in asked for option in variant.options]:
        alive = {f for f, chance in belief_after(pack, {name: option}).faults.items() if chance > 0.0}
        assert alive == {f.id for f in pack.faults.values() if option in f.requires_variant.get(name, {option})}


def test_an_answer_that_only_some_ovens_can_give_tells_the_kind():
    belief = belief_after(SMALL, {"code-stays": "stays", "screen-shows": "letters"})
    assert belief.faults["thermostat-drifted"] == 0.0


def test_an_error_code_makes_electronic_control_near_certain():
    belief = belief_after(OVEN, {"display-state": "error-code"})
    options = OVEN.variants["control"].options
    totals = [sum(column) for column in zip(*belief.variant_weights["control"], strict=True)]
    rows = [
        sum(c * w / t for c, w, t in zip(belief.probabilities, row, totals, strict=True) if t)
        for row in belief.variant_weights["control"]
    ]
    assert dict(zip(options, rows, strict=True))["electronic"] > 0.9
