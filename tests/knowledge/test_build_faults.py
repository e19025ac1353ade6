"""Faults from YAML with what they do to the oven, and the pairs that come together."""

import pytest

from tests.builders import make_fault
from tests.knowledge.small_packs import SMALL_PACK, copy_of_small_pack, edit, told_about
from triage.engine.frequency import FREQUENCIES
from triage.engine.pack import Band
from triage.knowledge.build_faults import can_coexist
from triage.knowledge.pack_builder import build_pack

PACK = build_pack(SMALL_PACK)


def test_a_fault_has_what_its_author_wrote():
    fault = PACK.faults["element-open"]
    assert (fault.kind, fault.family, fault.band, fault.calls_per_1000) == ("fault", "element", Band.QUALIFIED, 50.0)
    assert (fault.performed_by, fault.interim_use, fault.repair_minutes, fault.price_class) == (
        "technician",
        "leave-off",
        "30-60",
        "p2",
    )
    assert (fault.online_ratio, fault.noise_share, dict(fault.requires_variant)) == (1.0, 0.0, {})


def test_a_fault_may_need_a_kind_of_oven_and_be_looked_up_oftener_than_called_for():
    assert PACK.faults["board-dead"].requires_variant == {"control": frozenset({"electronic"})}
    assert PACK.faults["lamp-failed"].online_ratio == 2.0
    assert PACK.faults["other"].noise_share == 0.3


def test_effects_are_words_spread_over_the_levels_of_a_condition():
    (effect, *_) = PACK.faults["lamp-failed"].effects
    assert effect.condition == "lamp"
    assert effect.when is None
    whole = FREQUENCIES["never"] + FREQUENCIES["almost-always"]
    assert effect.levels == pytest.approx((FREQUENCIES["never"] / whole, FREQUENCIES["almost-always"] / whole))


def test_an_effect_on_some_ovens_stands_before_the_general_one():
    special, general = PACK.faults["element-open"].effects
    assert (special.condition, special.when) == ("heat", frozenset({"electronic"}))
    assert (general.condition, general.when) == ("heat", None)


def test_never_is_rarer_where_the_condition_must_not_come_from_nowhere():
    effect = next(e for e in PACK.faults["board-dead"].effects if e.condition == "display")
    assert effect.levels[0] == pytest.approx(0.002 / (0.002 + FREQUENCIES["usually"]))


def test_a_fault_can_be_commoner_on_one_kind_of_oven():
    assert PACK.faults["element-open"].rate_multipliers == {"control": {"electronic": 2.0}}
    assert PACK.faults["board-dead"].rate_multipliers == {}


def test_a_chain_is_a_pair_whose_rate_follows_from_the_cause():
    chain = PACK.fault_pairs[0]
    assert (chain.cause, chain.effect, chain.causal) == ("element-open", "board-dead", True)
    assert chain.rate_per_1000 == pytest.approx(50 * FREQUENCIES["often"] * 0.3)


def test_a_companion_stands_beside_common_faults_only_and_by_chance():
    companion = PACK.fault_pairs[1]
    assert (companion.cause, companion.effect, companion.causal) == ("element-open", "lamp-failed", False)
    assert companion.rate_per_1000 == pytest.approx(50 * 10 / 1000)
    assert len(PACK.fault_pairs) == 2


def test_a_companion_stands_beside_every_fault_above_the_floor(tmp_path):
    folder = copy_of_small_pack(tmp_path)
    edit(folder, "pack", "companion_min_calls: 40", "companion_min_calls: 20")
    pairs = {(pair.cause, pair.effect) for pair in build_pack(folder).fault_pairs}
    assert pairs == {("element-open", "board-dead"), ("element-open", "lamp-failed"), ("board-dead", "lamp-failed")}


def test_a_pair_that_is_a_chain_is_not_a_companion_as_well(tmp_path):
    folder = copy_of_small_pack(tmp_path)
    edit(folder, "pack", "effect: board-dead", "effect: lamp-failed")
    assert [(pair.effect, pair.causal) for pair in build_pack(folder).fault_pairs] == [("lamp-failed", True)]


@pytest.mark.parametrize(
    ("mine", "other", "together"),
    [
        ({}, {}, True),
        ({"control": {"electronic"}}, {}, True),
        ({"control": {"electronic"}}, {"control": {"electronic", "mechanical"}}, True),
        ({"control": {"electronic"}}, {"control": {"mechanical"}}, False),
        ({"control": {"electronic"}, "form": {"built-in"}}, {"form": {"freestanding"}}, False),
    ],
)
def test_two_faults_stand_together_only_where_one_oven_can_have_both(mine, other, together):
    assert can_coexist(make_fault("one", requires_variant=mine), make_fault("two", requires_variant=other)) is together


@pytest.mark.parametrize(
    ("field", "old", "new", "range_told"),
    [
        ("calls_per_1000", "calls_per_1000: 50", "calls_per_1000: 0", "0.01 to 1000"),
        ("online_ratio", "online_ratio: 2", "online_ratio: 30", "0.1 to 20"),
        ("noise_share", "noise_share: 0.3", "noise_share: 0.9", "0 to 0.5"),
    ],
)
def test_numbers_have_their_limits(tmp_path, field, old, new, range_told):
    folder = copy_of_small_pack(tmp_path)
    edit(folder, "faults", old, new)
    (line,) = told_about(folder)
    assert f", {field}: must be a number from {range_told}, not " in line


@pytest.mark.parametrize(
    ("old", "new", "allowed"),
    [
        ("kind: user", "kind: guest", "fault, normal, user, other"),
        ("performed_by: householder", "performed_by: anyone", "householder, technician, electrician, network-operator"),
        ("price_class: p4", "price_class: cheap", "p0, p1, p2, p3, p4, e1, e2"),
    ],
)
def test_what_is_not_a_choice_is_told_with_all_of_them(tmp_path, old, new, allowed):
    folder = copy_of_small_pack(tmp_path)
    edit(folder, "faults", old, new)
    (line,) = told_about(folder)
    assert line.endswith(f": has no {new.split()[1]!r}. Allowed: {allowed}.")
