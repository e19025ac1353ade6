"""All firms together, one firm among others, and how fast a wrong rate is put right."""

from random import Random

import pytest

from tests.builders import PACK
from tests.learning.visits import SMALL_REGIONS, drawn_visits, real_regions, visit, visits, written_library
from triage.authoring.figures import log_score
from triage.engine.pack import Band
from triage.knowledge.overlay import Numbers, apply_overlay, learnable_answers, learnable_effects
from triage.learning.cross_validation import forecasts
from triage.learning.fit import prepare
from triage.learning.shrinkage import PRIOR_WEIGHT


def numbers_of(outcomes, firm=""):
    lesson = prepare(PACK, SMALL_REGIONS, outcomes, firm)
    return lesson.numbers(range(len(lesson.outcomes)))


def test_the_order_of_the_outcomes_does_not_matter():
    outcomes = [visit("element-open", {"heats": "no-heat"}), visit("lamp-failed", {"heats": "normal"}), visit("other")]
    forwards, backwards = numbers_of(outcomes * 5), numbers_of(outcomes[::-1] * 5)
    assert forwards.calls == pytest.approx(backwards.calls)
    assert forwards.effects.keys() == backwards.effects.keys()
    assert all(forwards.effects[key] == pytest.approx(row) for key, row in backwards.effects.items())


def test_rows_add_up_to_one_and_only_learnable_ones_move():
    numbers = numbers_of([visit("element-open", {"complaint": "is-dead", "heats": "less", "sparks": "no-sparks"})] * 40)
    assert numbers.effects
    assert numbers.answers
    assert all(sum(row) == pytest.approx(1.0) for row in [*numbers.effects.values(), *numbers.answers.values()])
    assert numbers.effects.keys() <= learnable_effects(PACK).keys()
    assert numbers.answers.keys() <= learnable_answers(PACK).keys()


def test_a_row_that_hardly_moves_is_left_as_it_is():
    assert numbers_of([visit("lamp-failed", {"lamp-state": "out"})]).effects == {}


def test_one_firm_alone_is_the_firm_and_all_firms():
    outcomes = [visit("lamp-failed", firm="north"), visit("other", firm="north")] * 10
    assert numbers_of(outcomes, "north").calls == pytest.approx(numbers_of(outcomes).calls)


def test_a_firm_lies_between_what_it_found_and_what_the_others_did():
    own = [visit("lamp-failed", firm="north")] * 30
    others = [visit("other", firm="south")] * 300
    firm = numbers_of([*own, *others], "north").calls
    pooled, without = numbers_of(others).calls, numbers_of(own).calls
    assert pooled["lamp-failed"] < firm["lamp-failed"] < without["lamp-failed"]
    assert without["other"] < firm["other"] < pooled["other"]


def test_a_firms_own_outcomes_count_once():
    """Its own are left out of what it starts from: the others' outcomes and then its own, and nothing else."""
    own, others = [visit("lamp-failed", firm="north")] * 30, [visit("other", firm="south")] * 50
    start = apply_overlay(PACK, numbers_of(others), "others")
    lesson = prepare(start, SMALL_REGIONS, own)
    by_hand = lesson.numbers(range(len(own))).calls
    assert numbers_of([*own, *others], "north").calls == pytest.approx(by_hand)


def test_what_the_others_found_stays_with_a_firm_that_saw_none_of_it():
    others = [visit("element-open", {"heats": "less"}, firm="south")] * 60
    firm = numbers_of([visit("other", firm="north"), *others], "north")
    assert firm.effects == numbers_of(others).effects


def test_only_numbers_change():
    laid = prepare(PACK, SMALL_REGIONS, visits(*["element-open"] * 50)).pack(range(50))
    assert laid.red_flags is PACK.red_flags
    assert laid.tasks is PACK.tasks
    for fault in PACK.faults.values():
        new = laid.faults[fault.id]
        assert (new.band, new.requires_variant, new.kind, new.online_ratio) == (
            fault.band,
            fault.requires_variant,
            fault.kind,
            fault.online_ratio,
        )
    dangerous = [fault.id for fault in PACK.faults.values() if fault.band is Band.MAKE_SAFE]
    assert all(same_rows(laid, d) for d in dangerous)


def same_rows(laid, fault):
    pairs = zip(laid.faults[fault].effects, PACK.faults[fault].effects, strict=True)
    return all(new.levels == old.levels for new, old in pairs)


def test_twenty_unlucky_outcomes_move_a_row_by_at_most_eight_in_a_hundred():
    """20 / (250 + 20), in total variation: every answer says the least likely thing."""
    numbers = numbers_of([visit("lamp-failed", {"lamp-state": "works", "heats": "no-heat"})] * 20)
    old = learnable_effects(PACK) | learnable_answers(PACK)
    for key, row in [*numbers.effects.items(), *numbers.answers.items()]:
        assert sum(abs(a - b) for a, b in zip(row, old[key], strict=True)) / 2 <= 20 / (PRIOR_WEIGHT + 20) + 1e-12


def test_a_rate_three_times_the_packs_is_put_right_in_200_outcomes():
    """The commonest fault comes three times as often as the pack says. Held against 800 further checks, the log score
    is then within 2 % of that of a pack that knows the true rate; before it was not."""
    pack, regions = written_library().pack, real_regions()
    rate = 3 * pack.faults["fan-element-open"].calls_per_1000
    truth = apply_overlay(pack, Numbers(calls={"fan-element-open": rate}), "truth")
    further = drawn_visits(truth, 800, Random(11), tag="further")
    taught = prepare(pack, regions, drawn_visits(truth, 200, Random(12))).pack(range(200))
    best, before, after = (
        log_score(forecast.found_probability for forecast in forecasts(known, regions, further))
        for known in (truth, pack, taught)
    )
    assert before > 1.02 * best
    assert best < after < 1.02 * best


def test_twenty_outcomes_of_one_rare_fault_leave_the_log_score_within_five_percent():
    """Twenty visits in a row find a door that was not shut; the ovens are as the pack says."""
    pack, regions = written_library().pack, real_regions()
    further = drawn_visits(pack, 500, Random(13), tag="further")
    unlucky = [visit("door-not-shut", region="gb-eng", reference=f"visit-{n}") for n in range(20)]
    misled = prepare(pack, regions, unlucky).pack(range(20))
    best, after = (
        log_score(forecast.found_probability for forecast in forecasts(known, regions, further))
        for known in (pack, misled)
    )
    assert best < after < 1.05 * best
