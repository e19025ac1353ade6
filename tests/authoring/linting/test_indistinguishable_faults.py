"""Two faults that make everybody say the same are found, unless the pack says that they look alike."""

from dataclasses import replace
from itertools import chain, combinations

import pytest
from hypothesis import given, settings, strategies

from tests.builders import ANYWHERE, ELECTRIC_OVEN, FAULTS, by_id, electric_oven, make_pack
from triage.authoring.linting.finding import Gravity, PackSource
from triage.authoring.linting.indistinguishable_faults import MIN_DISTANCE_REMARK, _distance, indistinguishable_faults
from triage.engine.model import compile_model

PLACES = PackSource(ELECTRIC_OVEN)


def with_twin(**changes):
    """The small pack with a second fault that does what the open element does."""
    twin = replace(FAULTS["element-open"], **({"id": "wire-open", "family": "wiring"} | changes))
    return make_pack(faults=FAULTS | by_id(twin))


def found(pack):
    return [
        (f.gravity, f.problem.where, f.problem.what)
        for f in indistinguishable_faults(compile_model(pack, ANYWHERE), PLACES)
    ]


def test_faults_that_no_question_tells_apart_are_a_mistake():
    ((gravity, where, what),) = [each for each in found(with_twin()) if each[1] == "element-open"]
    assert (gravity, where) == (Gravity.MISTAKE, "element-open")
    assert what.startswith("no question tells it from wire-open: the best, ")
    assert what.endswith("differs in 0 of 100 homes.")


def test_members_of_one_family_and_stated_look_alikes_may_be_the_same():
    assert not [each for each in found(with_twin(family="element")) if "wire-open" in each[2]]
    pack = with_twin()
    stated = replace(pack, look_alikes=(frozenset({"element-open", "wire-open"}),))
    assert not [each for each in found(stated) if "wire-open" in each[2]]


def test_one_different_effect_is_enough_to_tell_them_apart():
    lamp = FAULTS["lamp-failed"].effects
    assert not [each for each in found(with_twin(effects=FAULTS["element-open"].effects + lamp)) if "wire" in each[2]]


def test_faults_on_different_ovens_are_told_apart_by_the_kind_of_oven():
    """The board needs an electronic oven, the thermostat a mechanical one."""
    assert not [each for each in found(make_pack()) if {"board-dead", "thermostat-drifted"} <= set(each[1:])]


def test_the_pack_people_use_has_no_unstated_twins():
    assert indistinguishable_faults(compile_model(electric_oven(), ANYWHERE), PLACES) == []


chances = strategies.lists(strategies.floats(0.01, 1.0), min_size=4, max_size=4)


@settings(deadline=None)
@given(chances, chances)
def test_the_distance_is_the_most_that_any_set_of_answers_can_differ(one, other):
    """Levin, Peres and Wilmer, "Markov Chains and Mixing Times", proposition 4.2: half the sum of the absolute
    differences is the largest difference over all events."""
    p, q = [x / sum(one) for x in one], [x / sum(other) for x in other]
    events = chain.from_iterable(combinations(range(4), size) for size in range(5))
    most = max(abs(sum(p[i] for i in event) - sum(q[i] for i in event)) for event in events)
    assert _distance(tuple(p), tuple(q)) == pytest.approx(most, abs=1e-12)


def test_a_question_that_hardly_ever_comes_up_tells_little():
    """What only exists after an answer one fault in a hundred gives cannot split it from its twin."""
    pack = make_pack()
    says = pack.observations["code-stays"].answer_probabilities
    assert _distance((*(0.01 * x for x in says[0]), 0.99), (*(0.01 * x for x in says[1]), 0.99)) < MIN_DISTANCE_REMARK
