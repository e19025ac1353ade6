"""Which numbers matter: slopes against small true changes of the pack, and costs against what a change really costs."""

from dataclasses import replace
from functools import cache
from math import exp, log, sqrt
from random import Random
from statistics import fmean, stdev

import pytest

from tests.builders import ANYWHERE, make_pack
from triage.authoring import sensitivity
from triage.authoring.check_runner import CheckRunner
from triage.authoring.sensitivity import EFFECT, RATE, TRUST, Sums, slopes
from triage.authoring.simulated_users import AnswerModel, draw_user
from triage.engine import compile_model, infer_belief

SURE = AnswerModel(0.0, {"memory": 0.0, "look": 0.0, "trial": 0.0})
CHECKS = 1500
STEP = 1e-5


@cache
def singles():
    """Without pairs, and without the question whose "can't tell" would say something about the kind of oven."""
    pack = make_pack(fault_pairs=())
    return replace(pack, observations={name: o for name, o in pack.observations.items() if name != "code-stays"})


@cache
def ended_checks():
    walk, dice = CheckRunner(singles(), ANYWHERE), Random(8)
    people = [draw_user(walk.model, dice, SURE) for _ in range(CHECKS)]
    return [(walk.run(p.opening_answers(), p.answer).answers, p.family) for p in people]


def score(pack, answers, family):
    return log(infer_belief(compile_model(pack, ANYWHERE), answers).families[family])


def moved(row, place, by):
    raw = [chance * exp(by) if n == place else chance for n, chance in enumerate(row)]
    return tuple(value / sum(raw) for value in raw)


def with_rate(pack, fault, by):
    changed = replace(pack.faults[fault], calls_per_1000=pack.faults[fault].calls_per_1000 * exp(by))
    return replace(pack, faults={**pack.faults, fault: changed})


def with_effect(pack, fault, number, place, by):
    effects = list(pack.faults[fault].effects)
    effects[number] = replace(effects[number], levels=moved(effects[number].levels, place, by))
    return replace(pack, faults={**pack.faults, fault: replace(pack.faults[fault], effects=tuple(effects))})


def with_trust(pack, name, by):
    asked = pack.observations[name]
    sound = pack.conditions[asked.reports].baseline
    anyone = [
        sum(s * row[i] for s, row in zip(sound, asked.answer_probabilities, strict=True))
        for i in range(len(asked.options))
    ]
    says = tuple(
        tuple(a + exp(by) * (p - a) for p, a in zip(row, anyone, strict=True)) for row in asked.answer_probabilities
    )
    return replace(pack, observations={**pack.observations, name: replace(asked, answer_probabilities=says)})


TRAILS = [
    ({"heats": "no-heat", "control": "electronic"}, "control"),
    ({"heats": "less", "screen-shows": "letters", "complaint": "too-slow"}, "element"),
    ({"complaint": "stays-cold", "heats": "no-heat", "meter": "low"}, "settings"),
    ({"lamp-state": "out", "sparks": "one-flash", "screen-shows": "clock-time"}, "lamp"),
]


@pytest.mark.parametrize(("answers", "family"), TRAILS)
@pytest.mark.parametrize(
    ("number", "change"),
    [
        ((RATE, "board-dead"), lambda pack, by: with_rate(pack, "board-dead", by)),
        ((RATE, "other"), lambda pack, by: with_rate(pack, "other", by)),
        ((EFFECT, "board-dead", "heat", "none"), lambda pack, by: with_effect(pack, "board-dead", 1, 2, by)),
        ((EFFECT, "board-dead", "display", "code"), lambda pack, by: with_effect(pack, "board-dead", 2, 1, by)),
        ((EFFECT, "lamp-failed", "lamp", "dark"), lambda pack, by: with_effect(pack, "lamp-failed", 0, 1, by)),
        ((TRUST, "heats"), lambda pack, by: with_trust(pack, "heats", by)),
        ((TRUST, "screen-shows"), lambda pack, by: with_trust(pack, "screen-shows", by)),
        ((TRUST, "sparks"), lambda pack, by: with_trust(pack, "sparks", by)),
    ],
    ids=lambda value: "-".join(value) if isinstance(value, tuple) else "",
)
def test_a_slope_is_what_a_small_change_of_the_pack_does(monkeypatch, answers, family, number, change):
    monkeypatch.setattr(sensitivity, "MIN_SHIFT", 0.0)
    pack = singles()
    found = slopes(compile_model(pack, ANYWHERE), answers, family).get(number, 0.0)
    up, down = (score(change(pack, by), answers, family) for by in (STEP, -STEP))
    assert found == pytest.approx((up - down) / (2 * STEP), abs=1e-6)


@pytest.mark.parametrize("place", [0, 1])
def test_effects_of_one_kind_of_oven_and_of_all_are_told_apart(monkeypatch, place):
    """The element's effect on heat has one table for electronic ovens and one for the others, under one name."""
    monkeypatch.setattr(sensitivity, "MIN_SHIFT", 0.0)
    pack, (answers, family) = singles(), TRAILS[1]
    both = [
        with_effect(with_effect(pack, "element-open", 1, place, by), "element-open", 2, place, by)
        for by in (STEP, -STEP)
    ]
    up, down = (score(changed, answers, family) for changed in both)
    level = pack.conditions["heat"].levels[place]
    found = slopes(compile_model(pack, ANYWHERE), answers, family)[EFFECT, "element-open", "heat", level]
    assert found == pytest.approx((up - down) / (2 * STEP), abs=1e-6)


def test_a_companion_follows_both_rates_and_a_chain_its_cause(monkeypatch):
    monkeypatch.setattr(sensitivity, "MIN_SHIFT", 0.0)
    pack, answers = make_pack(), {"heats": "no-heat", "lamp-state": "out"}

    def changed(fault, by):
        follows = {"element-open": {0}, "lamp-failed": {0}, "element-arcing": {1}, "board-dead": set()}[fault]
        pairs = tuple(
            replace(pair, rate_per_1000=pair.rate_per_1000 * exp(by)) if place in follows else pair
            for place, pair in enumerate(pack.fault_pairs)
        )
        return replace(with_rate(pack, fault, by), fault_pairs=pairs)

    found = slopes(compile_model(pack, ANYWHERE), answers, "element")
    for fault in ("element-open", "lamp-failed", "element-arcing", "board-dead"):
        up, down = (score(changed(fault, by), answers, "element") for by in (STEP, -STEP))
        assert found[RATE, fault] == pytest.approx((up - down) / (2 * STEP), abs=1e-6)


def test_where_the_pack_is_right_no_number_can_be_bettered():
    """The score is proper: over its own sample every mean slope is nothing, within what chance allows."""
    model = compile_model(singles(), ANYWHERE)
    found = [slopes(model, answers, family) for answers, family in ended_checks()]
    names = {name for each in found for name in each}
    assert len(names) > 20
    for name in names:
        values = [each.get(name, 0.0) for each in found]
        assert abs(fmean(values)) <= 4.5 * stdev(values) / sqrt(CHECKS) + 1e-4, name


@pytest.mark.parametrize("fault", ["element-open", "board-dead", "other"])
def test_the_cost_is_near_what_a_rate_off_by_two_really_loses(fault):
    model = compile_model(singles(), ANYWHERE)
    sums = Sums()
    for answers, family in ended_checks():
        sums.add(slopes(model, answers, family))
    cost = next(cost for cost in sums.costs() if cost.number == (RATE, fault))
    lost = [
        fmean(score(singles(), a, f) - score(with_rate(singles(), fault, by), a, f) for a, f in ended_checks())
        for by in (log(2), -log(2))
    ]
    # The mean of both directions: what the sample's own luck adds to one it takes from the other.
    assert cost.nats == pytest.approx(fmean(lost), rel=0.35)


def test_the_surest_dear_number_comes_first_and_trust_counts_a_tenth():
    sums, rest = Sums(), Sums()
    rare, steady, trust = (RATE, "rare"), (EFFECT, "a", "heat", "none"), (TRUST, "b")
    sums.add({rare: 0.0, steady: 1.0, trust: -1.0})
    rest.add({rare: 4.0, steady: -1.0, trust: 1.0})
    sums.merge(rest)
    found = {cost.number: (cost.nats, cost.error) for cost in sums.costs()}
    two, tenth = 0.5 * log(2) ** 2, 0.5 * log(1.1) ** 2
    assert found[steady] == pytest.approx((two, 0.0))
    assert found[trust] == pytest.approx((tenth, 0.0))
    # Squares 0 and 16: their mean is 8 and the standard error of it 8 over the root of 2.
    assert found[rare] == pytest.approx((8 * two, 8 * two / sqrt(2)))
    assert [str(cost) for cost in sums.costs()] == [
        "how often rare occurs",
        "how often a leaves heat at none",
        "how far the answer to b is trusted",
    ]


def test_one_rare_check_does_not_make_a_number_the_dearest():
    sums = Sums()
    for check in range(400):
        sums.add({(RATE, "rare"): 20.0 if check == 0 else 0.0, (RATE, "common"): 0.5})
    rare, common = sorted(sums.costs(), key=lambda cost: -cost.nats)
    assert (rare.number, sums.costs()[0]) == ((RATE, "rare"), common)


def test_a_family_that_the_answers_rule_out_has_no_slope():
    assert slopes(compile_model(singles(), ANYWHERE), {"control": "mechanical"}, "control") == {}
