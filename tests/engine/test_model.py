"""A pack compiled for a region: its tables, how faults combine, what a region changes."""

from dataclasses import replace
from itertools import product

import pytest
from hypothesis import given, strategies

from tests.builders import ANYWHERE, electric_oven, make_fault, make_pack
from triage.engine.belief import infer_belief
from triage.engine.errors import PackError
from triage.engine.model import compile_model
from triage.engine.pack import Band, Region
from triage.engine.tables import noisy_max

SMALL, OVEN = make_pack(), electric_oven()


@strategies.composite
def distributions(draw):
    """One to three faults' chances over the same two to five levels."""
    size = draw(strategies.integers(2, 5))
    weight = strategies.floats(0.0, 1.0)
    rows = draw(strategies.lists(strategies.lists(weight, min_size=size, max_size=size), min_size=1, max_size=3))
    return [tuple((w + 1e-3) / (sum(row) + size * 1e-3) for w in row) for row in rows]


@given(rows=distributions())
def test_causes_act_independently_and_the_dominant_level_shows(rows):
    """Noisy-MAX against throwing every die."""
    expected = [0.0] * len(rows[0])
    for levels in product(range(len(expected)), repeat=len(rows)):
        chance = 1.0
        for row, level in zip(rows, levels, strict=True):
            chance *= row[level]
        expected[max(levels)] += chance
    assert noisy_max(rows) == pytest.approx(expected, abs=1e-12)


def test_one_cause_alone_is_left_as_it_is():
    assert noisy_max([(0.2, 0.5, 0.3)]) == pytest.approx((0.2, 0.5, 0.3), abs=1e-15)


@pytest.mark.parametrize("pack", [SMALL, OVEN], ids=["small", "electric oven"])
def test_every_row_of_every_table_is_a_distribution(pack):
    model = compile_model(pack, ANYWHERE)
    for table in [t for tables in (model.level_tables, model.answer_tables) for ts in tables.values() for t in ts]:
        assert len(table.index) == len(model.hypotheses)
        for row in table.distinct:
            assert sum(row) == pytest.approx(1.0, abs=1e-9)
            assert min(row) >= 0.0


def test_hypotheses_are_all_single_faults_and_the_pairs():
    hypotheses = compile_model(SMALL, ANYWHERE).hypotheses
    assert [h.faults for h in hypotheses] == [
        *((fault,) for fault in SMALL.faults),
        ("element-open", "lamp-failed"),
        ("element-arcing", "board-dead"),
    ]


def test_a_pair_is_named_after_its_first_fault_and_takes_the_graver_band():
    pair = compile_model(SMALL, ANYWHERE).hypotheses[-1]
    assert (pair.family, pair.band) == ("element", Band.MAKE_SAFE)


def test_an_effect_for_one_kind_of_oven_outranks_the_general_one():
    model = compile_model(SMALL, ANYWHERE)
    mechanical, electronic = (table.distinct[table.index[0]] for table in model.level_tables["heat"])
    assert mechanical == pytest.approx((0.05, 0.15, 0.8))
    assert electronic == pytest.approx((0.1, 0.7, 0.2))


def test_a_level_never_occurs_on_a_kind_that_cannot_have_it():
    mechanical, electronic = compile_model(SMALL, ANYWHERE).level_tables["display"]
    assert {row[1] for row in mechanical.distinct} == {0.0}
    assert all(row[1] > 0.0 for row in electronic.distinct)


def test_a_fault_without_an_effect_leaves_a_condition_as_in_a_sound_oven():
    model = compile_model(SMALL, ANYWHERE)
    (table,) = model.level_tables["arcing"]
    assert table.distinct[table.index[list(SMALL.faults).index("lamp-failed")]] == (0.998, 0.002)


def test_a_vague_fault_looks_partly_like_anything():
    model = compile_model(SMALL, ANYWHERE)
    (table,) = model.level_tables["arcing"]
    assert table.distinct[table.index[list(SMALL.faults).index("other")]] == pytest.approx((0.8486, 0.1514))


def test_a_model_is_compiled_once_for_a_pack_and_a_region():
    assert compile_model(SMALL, ANYWHERE) is compile_model(SMALL, ANYWHERE)
    assert compile_model(SMALL, Region("elsewhere")) is not compile_model(SMALL, ANYWHERE)


def test_a_regions_own_shares_replace_those_of_the_pack():
    north = Region("north", shares={"control": {"mechanical": 0.1, "electronic": 0.9}})
    there = infer_belief(compile_model(SMALL, north), {}).faults
    here = infer_belief(compile_model(SMALL, ANYWHERE), {}).faults
    assert there["board-dead"] > 2 * here["board-dead"]
    assert there["thermostat-drifted"] < here["thermostat-drifted"] / 3


def test_a_region_may_name_its_shares_in_any_order():
    shares = {"mechanical": 0.1, "electronic": 0.9}
    one, other = (
        infer_belief(compile_model(SMALL, Region("north", shares={"control": dict(order)})), {"control": "electronic"})
        for order in (shares.items(), reversed(shares.items()))
    )
    assert one.probabilities == other.probabilities
    assert one.faults["board-dead"] > 0.0


def test_what_a_person_says_of_the_oven_holds_where_the_region_has_never_seen_one():
    nowhere = Region("nowhere", shares={"control": {"mechanical": 1.0, "electronic": 0.0}})
    belief = infer_belief(compile_model(SMALL, nowhere), {"control": "electronic"})
    assert sum(belief.probabilities) == pytest.approx(1.0, abs=1e-12)


def test_a_fault_that_occurs_on_no_oven_of_a_region_is_no_hypothesis_there():
    mechanical = Region("old", shares={"control": {"mechanical": 1.0, "electronic": 0.0}})
    belief = infer_belief(compile_model(SMALL, mechanical), {})
    assert belief.faults["board-dead"] == pytest.approx(0.0, abs=1e-6)


def test_a_pack_none_of_whose_faults_can_occur_is_refused_with_both_names():
    gated = make_fault("board-dead", requires_variant={"control": frozenset()})
    pack = replace(SMALL, faults={"board-dead": gated}, fault_pairs=())
    with pytest.raises(PackError, match=r"^no fault of small-oven can occur in region anywhere$"):
        compile_model(pack, ANYWHERE)
