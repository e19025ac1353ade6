"""Call rates from what was found, and the dangers that never fall."""

from dataclasses import replace

import pytest
from scipy.stats import dirichlet

from tests.builders import ANYWHERE, PACK, make_pack
from tests.learning.visits import SMALL_REGIONS, real_regions, visit, visits, written_library
from triage.engine.belief import infer_belief
from triage.engine.model import compile_model
from triage.engine.pack import Band, Region
from triage.knowledge.overlay import Numbers, apply_overlay, faults_only, lowered_dangers, observed_by_technician
from triage.learning.call_rates import fitted_calls
from triage.learning.shrinkage import PRIOR_WEIGHT

# Every oven can have every fault, none dangerous, no pairs: the plain textbook case.
PLAIN = make_pack(
    faults={
        f.id: replace(f, requires_variant={}, rate_multipliers={}, band=Band.QUALIFIED, online_ratio=1.0)
        for f in PACK.faults.values()
    },
    fault_pairs=(),
)


def test_where_every_oven_can_have_every_fault_the_rates_are_the_dirichlet_mean_of_scipy():
    found = ["lamp-failed"] * 9 + ["board-dead"] * 3
    total = sum(fault.calls_per_1000 for fault in PLAIN.faults.values())
    after = dirichlet(
        [PRIOR_WEIGHT * f.calls_per_1000 / total + found.count(f.id) for f in PLAIN.faults.values()]
    ).mean()
    calls = fitted_calls(PLAIN, PLAIN, SMALL_REGIONS, visits(*found))
    assert sum(calls.values()) == pytest.approx(total)
    assert [value / total for value in calls.values()] == pytest.approx(after, abs=1e-12)


def test_no_outcome_changes_nothing():
    calls = fitted_calls(PACK, PACK, SMALL_REGIONS, [])
    assert calls == pytest.approx({fault.id: fault.calls_per_1000 for fault in PACK.faults.values()})


def test_ovens_that_cannot_have_a_fault_do_not_count_against_it():
    mechanical = Region("old-ovens", shares={"control": {"mechanical": 1.0, "electronic": 0.0}})
    regions = {ANYWHERE.id: ANYWHERE, mechanical.id: mechanical}
    there = [visit("element-open", region=mechanical.id) for _ in range(200)]
    calls = fitted_calls(PACK, PACK, regions, there)
    kept = calls["board-dead"] / PACK.faults["board-dead"].calls_per_1000
    fallen = calls["lamp-failed"] / PACK.faults["lamp-failed"].calls_per_1000
    assert fallen < 0.7 * kept


def test_a_pair_counts_for_the_fault_its_job_is_named_after():
    calls = fitted_calls(PACK, PACK, SMALL_REGIONS, [visit(("lamp-failed", "element-open"))] * 30)
    assert calls["element-open"] > PACK.faults["element-open"].calls_per_1000
    assert calls["lamp-failed"] < PACK.faults["lamp-failed"].calls_per_1000


def dangerous(pack):
    return [fault.id for fault in pack.faults.values() if fault.band is Band.MAKE_SAFE]


def test_ten_thousand_harmless_visits_lower_no_danger_in_any_region():
    pack, regions = written_library().pack, real_regions()
    harmless = [visit("lamp-failed", region="gb-eng"), visit("user-wrong-function", region="us")] * 5000
    laid = apply_overlay(pack, Numbers(calls=fitted_calls(pack, pack, regions, harmless)), "learnt")
    assert list(lowered_dangers(pack, laid, regions.values())) == []
    before, after = (infer_belief(compile_model(faults_only(p), regions["gb-eng"]), {}).faults for p in (pack, laid))
    assert after["lamp-failed"] > 5 * before["lamp-failed"]
    assert all(after[fault] >= before[fault] * (1 - 1e-8) for fault in dangerous(pack))


def test_a_danger_that_is_found_becomes_more_likely():
    pack, regions = written_library().pack, real_regions()
    calls = fitted_calls(pack, pack, regions, [visit("neutral-fault", region="gb-eng")] * 20)
    assert calls["neutral-fault"] > 10 * pack.faults["neutral-fault"].calls_per_1000


def van_chances(pack, region):
    return infer_belief(compile_model(faults_only(observed_by_technician(pack)), region), {}).probabilities


@pytest.mark.parametrize("region", ["gb-eng", "us"])
def test_twenty_unlucky_visits_move_less_than_nine_in_a_hundred_of_the_chances_anywhere(region):
    """All twenty find the same fault, whichever it is (total variation). Twenty against a worth of 250 is eight in a
    hundred; keeping the dangers where they are takes the rest."""
    pack, regions = written_library().pack, real_regions()
    before = {code: van_chances(pack, regions[code]) for code in ("gb-eng", "us")}
    for fault in pack.faults:
        calls = fitted_calls(pack, pack, regions, [visit(fault, region=region)] * 20)
        laid = apply_overlay(pack, Numbers(calls=calls), "unlucky")
        for code, old in before.items():
            pairs = zip(van_chances(laid, regions[code]), old, strict=True)
            assert sum(abs(new - was) for new, was in pairs) / 2 < 0.09
