"""Broken on purpose: an engine that breaks one rule is caught by the check of that rule, on ordinary checks.

Each mutation changes the engine for one test only; the rules go on reading the pack people use. The same walks find
nothing on the engine as it is, so it is the mutation that they find.
"""

from dataclasses import dataclass, replace

import pytest

from tests.safety.forging import forge
from tests.safety.invariants import more_danger_never_lowers, stricter_place_never_adds
from tests.safety.leading_to import trail_to
from tests.safety.result import SearchResult
from tests.safety.walking import look_at, region_named, walk_from
from triage.engine import Band, Emergency, advice, answers, check, run_check, safety
from triage.knowledge.library import library

PACK = library().pack
HERE = "gb-eng"
DANGEROUS, TRIPS, SLOW = "smell", "trips", "slow-or-cool"


def found_by_walking(opening=DANGEROUS, depth=1):
    return walk_from(HERE, opening, depth, False).violations


def found_at(pairs, region=HERE):
    found = SearchResult()
    look_at(found, PACK, region_named(region), pairs)
    return found.violations


def instead(monkeypatch, pack=PACK, made=lambda step: step):
    """The engine, but reasoning with another pack, or with `made` of each step."""

    def altered(_pack, region, pairs):
        found = run_check(pack, region, pairs)
        found.__dict__["step"] = made(found.step)
        return found

    monkeypatch.setattr(check, "run_check", altered)


def pack_with_tasks(**changes):
    return replace(PACK, tasks={name: replace(task, **changes) for name, task in PACK.tasks.items()})


@pytest.mark.parametrize("opening", [DANGEROUS, TRIPS, SLOW])
def test_nothing_is_found_on_the_engine_as_it_is(opening):
    assert found_by_walking(opening, 2) == ""


def test_1_a_red_flag_turned_into_a_caution_in_the_engine_is_caught(monkeypatch):
    level = PACK.red_flags["tripped"].level
    softer = {**PACK.red_flags, "burning-smell": replace(PACK.red_flags["burning-smell"], level=level)}
    instead(monkeypatch, replace(PACK, red_flags=softer))
    assert "burning-smell was answered, and the step is Question." in found_by_walking()


def test_1_questions_asked_before_flags_are_looked_at_are_caught(monkeypatch):
    monkeypatch.setattr(check, "ends_check", lambda *_: False)
    assert "gas-smell was answered, and the step is Question." in found_by_walking()


def test_1_a_band_decided_before_flags_are_looked_at_is_caught(monkeypatch):
    decide = advice.decide_band
    monkeypatch.setattr(advice, "decide_band", lambda belief, answers, *_: decide(belief, answers, ()))
    assert "A red flag ended the check, and the band is" in found_by_walking()


def test_1_flags_in_another_order_are_caught(monkeypatch):
    raised = check.raised_flags
    monkeypatch.setattr(check, "raised_flags", lambda pack, answers: raised(pack, answers)[::-1])
    found = found_at([("smell-type", "gas"), ("heat-when-off", "keeps-heating")])
    assert "Answered: ['gas-smell', 'will-not-stop']; acted on: ['will-not-stop', 'gas-smell']." in found


def test_1_a_task_offered_after_a_red_flag_is_caught(monkeypatch):
    @dataclass(frozen=True)
    class Lenient(Emergency):
        tasks: tuple = (PACK.tasks["let-it-cool"],)

    def lenient(step):
        told = (step.flags, step.verdict, step.follow_up_question) if isinstance(step, Emergency) else ()
        return Lenient(*told) if told else step

    instead(monkeypatch, made=lenient)
    assert "A task is offered after a red flag that ends the check." in found_by_walking()


def test_1_a_question_after_a_red_flag_that_needs_looking_is_caught(monkeypatch):
    monkeypatch.setattr(check, "follow_up_question", lambda *_: "burn-marks")
    assert "burn-marks is asked after a red flag; it is a look question." in found_by_walking("no-heat")


def test_1_a_danger_lost_among_contradictions_is_caught(monkeypatch):
    monkeypatch.setattr(answers, "_safest", lambda *_: None)
    assert "was answered, and the step is Question." in forge(HERE, 300, 1).violations


def test_1_a_danger_set_aside_as_out_of_place_is_caught(monkeypatch):
    out = answers._is_out_of_place

    def strict(observation, answers):
        return out(replace(observation, flags={}), answers)

    monkeypatch.setattr(answers, "_is_out_of_place", strict)
    assert "hot-wall-switch was answered, and the step is Question." in found_at([("smell-place", "wall-switch")])


def test_1_a_danger_beyond_the_longest_trail_is_caught(monkeypatch):
    monkeypatch.setattr(answers, "_ends_check", lambda *_: False)
    far = [("no-such-question", "x")] * answers.MAX_ANSWERS
    assert "shock was answered, and the step is Question." in found_at([*far, ("shock-felt", "shock")])


def test_2_skilled_work_offered_is_caught(monkeypatch):
    found, pairs = SearchResult(), trail_to("photo-plate", HERE)
    instead(monkeypatch)
    look_at(found, pack_with_tasks(competence="skilled"), region_named(HERE), pairs)
    assert "photo-plate is offered; it is for a person who is skilled." in found.violations


def test_2_an_outcome_asked_before_its_task_is_caught(monkeypatch):
    monkeypatch.setattr(check, "next_question", lambda *_: "did-set-clock")
    assert "did-set-clock is asked before the task set-clock was offered." in found_by_walking()


def test_4_a_caution_that_lowers_the_band_is_caught(monkeypatch):
    region, pairs = region_named(HERE), [("complaint", "no-heat"), ("heat-main", "no-heat"), ("danger", "none")]
    before, caution = run_check(PACK, region, pairs), ("insulation-seen", "wool-showing")
    assert more_danger_never_lowers(PACK, region, pairs, before, caution) == []
    decide = advice.decide_band

    def soothed(belief, answers, flags):
        return Band.SELF_CHECK if tuple(flags) else decide(belief, answers, ())

    monkeypatch.setattr(advice, "decide_band", soothed)
    assert more_danger_never_lowers(PACK, region, pairs, before, caution) == [
        "With insulation-seen=wool-showing the band falls from qualified to self-check."
    ]


def test_4_a_region_that_adds_a_task_is_caught(monkeypatch):
    def generous(region, belief, answers, band):
        tasks = safety.offered_tasks(region, belief, answers)
        return (*tasks, PACK.tasks["first-burn-off"]) if region.removed_tasks else tasks

    monkeypatch.setattr(check, "tasks_for", generous)
    assert "first-burn-off is offered in au only." in found_at(trail_to("photo-plate", "au"), "au")


def test_4_a_region_whose_removed_task_is_offered_is_caught(monkeypatch):
    pairs = trail_to("change-lamp", HERE)
    region = replace(region_named(HERE), id="stricter", removed_tasks=frozenset({"change-lamp"}))
    assert stricter_place_never_adds(PACK, region, pairs, run_check(PACK, region, pairs)) == []
    forgetful = run_check(PACK, region_named(HERE), pairs)
    assert stricter_place_never_adds(PACK, region, pairs, forgetful) == [
        "change-lamp is offered although stricter removes it."
    ]


def test_5_a_task_offered_with_a_fault_it_is_unsafe_with_is_caught(monkeypatch):
    instead(monkeypatch, pack_with_tasks(unsafe_with=frozenset()))
    assert "is offered; it is unsafe with" in found_by_walking(TRIPS, 3)


def test_5_a_higher_bar_for_plausible_is_caught(monkeypatch):
    instead(monkeypatch, replace(PACK, limits=replace(PACK.limits, plausible_probability=0.2)))
    assert "is offered; it is unsafe with" in found_by_walking(TRIPS, 3)


def test_5_a_task_offered_after_a_caution_that_forbids_it_is_caught(monkeypatch):
    pairs = [*trail_to("look-at-seal", HERE), ("insulation-seen", "old-rope-or-board")]
    assert found_at(pairs) == ""
    instead(monkeypatch, pack_with_tasks(not_after=frozenset()))
    assert "look-at-seal is offered after ['asbestos']." in found_at(pairs)


def test_5_heating_after_a_caution_is_caught(monkeypatch):
    pairs = [*trail_to("choose-setting", HERE), ("insulation-seen", "wool-showing")]
    assert found_at(pairs) == ""
    instead(monkeypatch, pack_with_tasks(not_after=frozenset(), needs_heat=False))
    assert "choose-setting heats the oven after ['loose-wool']." in found_at(pairs)


def test_5_a_reset_offered_before_anything_tripped_is_caught(monkeypatch):
    instead(monkeypatch, pack_with_tasks(only_after=frozenset(), unsafe_with=frozenset()))
    assert "reset-once answers a caution nobody raised." in found_by_walking("nothing-on", 2)


def test_5_tasks_where_the_band_is_make_safe_are_caught(monkeypatch):
    monkeypatch.setattr(check, "tasks_for", lambda *_: tuple(PACK.tasks.values())[:1])
    assert "The band is make-safe, and tasks are offered." in found_by_walking("glass", 2)


def test_5_a_question_that_runs_the_oven_is_caught(monkeypatch):
    monkeypatch.setattr(check, "next_question", lambda *_: "meter-power")
    assert "meter-power is asked; the oven would have to run for it" in found_by_walking(SLOW)


def test_5_a_look_that_a_caution_forbids_is_caught(monkeypatch):
    monkeypatch.setattr(check, "next_question", lambda *_: "seal-look")
    found = found_at([("complaint", "door"), ("danger", "none"), ("door-fit", "snaps-or-drops")])
    assert "seal-look is asked; look-at-seal, which would find it out, is forbidden by ['" in found
    assert "springing-door" in found
