"""A check taken apart adds up: weights to the change of the odds, worth to what brute force finds."""

from math import log2, log10

import pytest

from tests.builders import ANYWHERE, electric_oven, make_pack
from triage.authoring.explanation import explain
from triage.engine.belief import infer_belief
from triage.engine.check import Question, run_check
from triage.engine.model import compile_model
from triage.engine.next_question import SECONDS_TO_READ

TRAIL = [("complaint", "stays-cold"), ("danger", "none"), ("heats", "no-heat"), ("control", "electronic")]


def explained(trail=TRAIL, pack=None):
    pack = pack or make_pack()
    return explain(run_check(pack, ANYWHERE, trail))


def decibans(chance):
    return 10.0 * log10(chance / (1.0 - chance))


def test_there_is_a_stage_before_any_answer_and_one_after_each():
    told = explained()
    assert [(stage.question, stage.answer) for stage in told.stages] == [("", ""), *TRAIL]
    assert told.stages[0].weights == {}


def test_the_weights_of_a_cause_add_up_to_the_change_of_its_log_odds():
    """Good (1950): weights of evidence of successive answers add."""
    told = explained()
    model = compile_model(make_pack(), ANYWHERE)
    before, after = infer_belief(model, {}), infer_belief(model, dict(TRAIL))
    for fault in told.stages[1].weights:
        total = sum(stage.weights[fault] for stage in told.stages[1:])
        assert total == pytest.approx(decibans(after.faults[fault]) - decibans(before.faults[fault]))


def test_the_belief_after_each_answer_is_the_engines():
    model = compile_model(make_pack(), ANYWHERE)
    for number, stage in enumerate(explained().stages):
        belief = infer_belief(model, dict(TRAIL[:number]))
        assert list(stage.causes) == list(belief.ranking[:5])
        assert stage.causes == {fault: belief.faults[fault] for fault in stage.causes}


def test_the_next_question_is_the_one_the_engine_asks_and_stands_among_the_candidates():
    pack, trail = electric_oven(), [("complaint", "no-heat"), ("danger", "none"), ("heat-main", "no-heat")]
    last = explained(trail, pack).stages[-1]
    step = run_check(pack, ANYWHERE, trail).step
    assert isinstance(step, Question)
    assert last.next.question == step.observation
    assert last.next.candidates[0].question == step.observation
    assert last.next.reason == "it tells the most per second"
    rates = [candidate.bits_per_second for candidate in last.next.candidates]
    assert rates == sorted(rates, reverse=True)
    assert len(rates) == 6


def test_bits_and_seconds_give_the_rate():
    pack = make_pack()
    for candidate in explained(TRAIL[:2]).stages[-1].next.candidates:
        assert candidate.seconds == pack.observations[candidate.question].effort_seconds + SECONDS_TO_READ
        assert candidate.bits_per_second == pytest.approx(candidate.bits / candidate.seconds)


def test_the_bits_are_those_of_mutual_information_by_enumeration():
    """Shannon: I(family; answer) = sum p(f, a) * log2(p(f, a) / p(f) p(a)), plus the same for the band. The choice
    leaves out hypotheses of less than eight per cent together, so the figures agree to within that."""
    pack, told = make_pack(), dict(TRAIL[:2])
    model = compile_model(pack, ANYWHERE)
    (shown,) = [c for c in explained(TRAIL[:2]).stages[-1].next.candidates if c.question == "lamp-state"]
    belief = infer_belief(model, told)
    table = model.answer_tables["lamp-state"][0]
    joint = [
        (h, option, chance * table.distinct[table.index[place]][option])
        for place, (h, chance) in enumerate(zip(model.hypotheses, belief.probabilities, strict=True))
        for option in range(2)
    ]
    bits = information([(h.family, o, p) for h, o, p in joint]) + information([(h.band, o, p) for h, o, p in joint])
    assert shown.bits == pytest.approx(bits, rel=0.35)


def information(joint):
    both, left, right = {}, {}, {}
    for a, b, p in joint:
        both[a, b] = both.get((a, b), 0.0) + p
        left[a] = left.get(a, 0.0) + p
        right[b] = right.get(b, 0.0) + p
    return sum(p * log2(p / (left[a] * right[b])) for (a, b), p in both.items() if p > 0.0)


def test_every_check_begins_with_the_complaint_and_the_danger_page():
    stages = explained().stages
    assert stages[0].next.question == "complaint"
    assert (stages[1].next.question, stages[1].next.candidates) == ("danger", ())


@pytest.mark.parametrize(
    ("trail", "ending"),
    [
        ([("shock", "felt-one")], "make it safe first: electric-shock"),
        ([("fuel", "gas")], "it is not about this appliance: gas-oven"),
        (TRAIL[:1], "the check goes on with danger"),
    ],
)
def test_how_a_check_ends_is_said(trail, ending):
    assert explained(trail).ending == ending


def test_the_advice_is_named_with_its_band():
    pack, trail = make_pack(), [("complaint", "stays-cold"), ("danger", "none")]
    while isinstance(step := run_check(pack, ANYWHERE, trail).step, Question):
        trail.append((step.observation, pack.observations[step.observation].options[-1]))
    assert explained(trail).ending == f"advice: {step.verdict.band.value}, {step.verdict.family}"


def test_as_json_it_holds_the_same():
    told = explained()
    plain = told.as_json()
    assert plain["version"] == "test-1"
    assert [stage["answer"] for stage in plain["stages"]] == [stage.answer for stage in told.stages]
