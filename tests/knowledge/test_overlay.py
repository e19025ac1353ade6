"""Numbers laid over a pack: they change what they name and nothing else."""

from dataclasses import fields, replace

import pytest

from tests.builders import ANYWHERE, PACK
from triage.engine.belief import infer_belief
from triage.engine.model import compile_model
from triage.knowledge.overlay import (
    Numbers,
    apply_overlay,
    danger_problems,
    faults_only,
    learnable_answers,
    learnable_effects,
    lowered_dangers,
    observed_by_technician,
)


def test_no_numbers_leave_every_chance_as_it_was():
    answers = {"complaint": "stays-cold", "heats": "less", "danger": "none"}
    before, after = (
        infer_belief(compile_model(pack, ANYWHERE), answers).probabilities
        for pack in (PACK, apply_overlay(PACK, Numbers(), "same"))
    )
    assert after == pytest.approx(before, abs=1e-15)


def test_each_number_stands_where_it_was_named_and_the_rest_of_the_pack_is_untouched():
    when = frozenset({"electronic"})
    numbers = Numbers(
        calls={"element-open": 100.0},
        effects={("element-open", "heat", when): (0.3, 0.3, 0.4)},
        answers={("heats", "half"): (0.5, 0.4, 0.1)},
    )
    laid = apply_overlay(PACK, numbers, "laid")
    assert laid.version == "laid"
    assert laid.faults["element-open"].calls_per_1000 == 100.0
    assert [(e.condition, e.when, e.levels) for e in laid.faults["element-open"].effects] == [
        ("trouble", None, (0.05, 0.3, 0.6, 0.05)),
        ("heat", when, (0.3, 0.3, 0.4)),
        ("heat", None, (0.05, 0.15, 0.8)),
    ]
    assert laid.observations["heats"].answer_probabilities == ((0.9, 0.08, 0.02), (0.5, 0.4, 0.1), (0.01, 0.09, 0.9))
    same = {field.name for field in fields(PACK)} - {"version", "faults", "fault_pairs", "observations"}
    assert all(getattr(laid, name) is getattr(PACK, name) for name in same)


def test_a_pair_keeps_its_share_of_the_calls_of_its_first_fault():
    laid = apply_overlay(PACK, Numbers(calls={"element-open": 100.0, "lamp-failed": 80.0}), "laid")
    assert [(pair.cause, pair.rate_per_1000) for pair in laid.fault_pairs] == [
        ("element-open", 3.0),
        ("element-arcing", 2.0),
    ]


def test_a_van_sees_no_fault_oftener_than_a_van_does():
    seen = observed_by_technician(PACK)
    assert seen.faults["programmer-not-set"].online_ratio == 1.0
    chained = replace(PACK.fault_pairs[1], cause="programmer-not-set", rate_per_1000=6.0)
    assert observed_by_technician(replace(PACK, fault_pairs=(chained,))).fault_pairs[0].rate_per_1000 == 3.0


def test_chances_before_any_answer_need_no_questions():
    whole, quick = (infer_belief(compile_model(pack, ANYWHERE), {}).probabilities for pack in (PACK, faults_only(PACK)))
    assert quick == pytest.approx(whole, abs=1e-15)


def test_what_outcomes_may_not_change():
    effects, answers = learnable_effects(PACK), learnable_answers(PACK)
    assert "element-arcing" not in {fault for fault, _, _ in effects}
    assert "cured-by-set-clock" not in {condition for _, condition, _ in effects}
    assert {observation for observation, _ in answers} == {
        "complaint", "heats", "meter", "screen-shows", "code-stays", "lamp-state",
    }  # fmt: skip


def test_a_danger_that_falls_is_named_with_where_it_falls():
    lower = apply_overlay(PACK, Numbers(calls={"element-arcing": 4.9}), "lower")
    assert list(lowered_dangers(PACK, lower, [ANYWHERE])) == [("element-arcing", "anywhere")] * 2
    (problem,) = danger_problems(PACK, lower, [ANYWHERE], "overlay.yaml")
    assert str(problem) == (
        "overlay.yaml:1: element-arcing: is less likely than in the pack as written, in anywhere. "
        "A dangerous fault may become more likely but never less: learn again, or delete the overlay."
    )


def test_a_danger_falls_too_where_the_others_rise():
    assert list(lowered_dangers(PACK, apply_overlay(PACK, Numbers(calls={"lamp-failed": 30.0}), "more"), [ANYWHERE]))
    assert not list(
        lowered_dangers(PACK, apply_overlay(PACK, Numbers(calls={"element-arcing": 6.0}), "up"), [ANYWHERE])
    )
