"""Variants and conditions from YAML: shares, levels, what is usual, and on which ovens a level can be."""

import pytest

from tests.knowledge.small_packs import SMALL_PACK, copy_of_small_pack, edit, told_about
from triage.engine.frequency import FREQUENCIES
from triage.knowledge.pack_builder import build_pack


@pytest.fixture
def pack_with(tmp_path):
    """The small pack with one place of a file written otherwise."""

    def _pack_with(name, old, new):
        folder = copy_of_small_pack(tmp_path)
        edit(folder, name, old, new)
        return folder

    return _pack_with


def test_a_variant_has_its_options_with_their_shares_in_the_order_written():
    control = build_pack(SMALL_PACK).variants["control"]
    assert (control.options, control.shares) == (("mechanical", "electronic"), (0.6, 0.4))


def test_shares_may_miss_one_by_a_rounding_and_no_more(pack_with):
    folder = pack_with("variants", "mechanical: 0.6", "mechanical: 0.6000001")
    assert build_pack(folder).variants["control"].shares[0] == 0.6000001
    edit(folder, "variants", "mechanical: 0.6000001", "mechanical: 0.601")
    assert told_about(folder) == [
        "small_pack/variants.yaml:2: control, shares: adds up to 1.001. Make the shares add up to 1."
    ]


def test_a_share_outside_nought_and_one_is_told(pack_with):
    told = told_about(pack_with("variants", "mechanical: 0.6", "mechanical: 1.6"))
    assert told[0] == ("small_pack/variants.yaml:2: control, shares: adds up to 0.4. Make the shares add up to 1.")
    assert told[1] == (
        "small_pack/variants.yaml:2: control, shares, mechanical: must be a number from 0 to 1, not 1.6."
        " Give one in that range."
    )


def test_a_condition_has_its_levels_and_how_a_sound_oven_stands():
    lamp = build_pack(SMALL_PACK).conditions["lamp"]
    whole = FREQUENCIES["almost-always"] + FREQUENCIES["rarely"]
    assert lamp.levels == ("lit", "dark")
    assert lamp.baseline == pytest.approx((FREQUENCIES["almost-always"] / whole, FREQUENCIES["rarely"] / whole))
    assert (lamp.parent, dict(lamp.allowed_on)) == (None, {})


def test_a_level_without_a_word_is_never_and_a_condition_may_say_how_rare_never_is():
    conditions = build_pack(SMALL_PACK).conditions
    usual = FREQUENCIES["never"] / (FREQUENCIES["almost-always"] + FREQUENCIES["never"])
    assert conditions["heat"].baseline[1] == pytest.approx(usual)
    assert conditions["display"].baseline[1] == pytest.approx(0.002 / (FREQUENCIES["almost-always"] + 0.002))


def test_a_level_can_be_kept_to_some_kinds_of_oven():
    display = build_pack(SMALL_PACK).conditions["display"]
    assert display.parent == "control"
    assert display.allowed_on == {"code": frozenset({"electronic"})}


def test_a_level_kept_to_an_unknown_kind_is_told(pack_with):
    assert told_about(pack_with("conditions", "{code: [electronic]}", "{code: [digital]}")) == [
        "small_pack/conditions.yaml:8: display, allowed_on, code: has no 'digital'. Allowed: mechanical, electronic."
    ]


def test_an_unknown_level_that_is_kept_to_a_kind_is_told(pack_with):
    assert told_about(pack_with("conditions", "allowed_on: {code:", "allowed_on: {codes:")) == [
        "small_pack/conditions.yaml:8: display, allowed_on, codes: has no 'codes'. Allowed: time, code."
    ]


def test_an_unknown_variant_is_told_with_all_that_are_known(pack_with):
    folder = pack_with("conditions", "display:\n  parent: control", "display:\n  parent: clock")
    assert (
        "small_pack/conditions.yaml:6: display, parent: has no 'clock'. Allowed: control, element-view."
        in told_about(folder)
    )


@pytest.mark.parametrize("floor", ["0", "0.2", "rarely"])
def test_how_rare_never_is_has_its_limits(pack_with, floor):
    (line,) = told_about(pack_with("conditions", "floor: 0.002", f"floor: {floor}"))
    assert line.startswith("small_pack/conditions.yaml:10: display, floor: must be a number from 0.0001 to 0.05")
