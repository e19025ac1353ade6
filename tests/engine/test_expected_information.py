"""What a question is expected to tell, against every world of a small pack; and the bound that saves the work."""

import pytest
from hypothesis import given, settings, strategies

from tests.builders import ANYWHERE, electric_oven, make_pack
from tests.engine.enumerating import joint_with, mutual_information, weighed, worlds_of
from tests.engine.trails import answers_of_one_oven, few, fitting_answers
from triage.engine import expected_information
from triage.engine.belief import infer_belief
from triage.engine.expected_information import ValueOfInformation
from triage.engine.model import compile_model

SMALL, OVEN = make_pack(), electric_oven()
WORLDS = worlds_of(SMALL, ANYWHERE)
NEARLY_NOTHING = 1e-9


@pytest.fixture(autouse=True, scope="module")
def every_hypothesis_counts():
    """The choice leaves unlikely causes out; here it may not, so that the sums can be compared."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(expected_information, "MAX_OMITTED_PROBABILITY", 0.0)
        patch.setattr(expected_information, "MAX_HYPOTHESES", 10_000)
        yield


def outlook_after(pack, answers):
    return ValueOfInformation(infer_belief(compile_model(pack, ANYWHERE), answers))


def band_of(faults):
    return max((SMALL.faults[fault].band for fault in faults), key=lambda band: band.severity)


def job_of(faults):
    """What a check settles on: the family, and how grave the case is."""
    return band_of(faults), SMALL.faults[faults[0]].family


def bits_by_enumeration(worlds, observation):
    """What the answer tells about the job plus what it tells about the band alone."""
    labels = (job_of, band_of)
    return sum(mutual_information(joint_with(SMALL, worlds, observation, label)) for label in labels)


def reporting(pack, answers):
    return [o for o in pack.observations.values() if o.reports and o.id not in answers and not o.task]


@settings(deadline=None, max_examples=10)
@given(answers=answers_of_one_oven(SMALL, 4))
def test_expected_information_is_that_of_all_worlds_one_by_one(answers):
    outlook = outlook_after(SMALL, answers)
    worlds = weighed(SMALL, WORLDS, answers)
    for observation in reporting(SMALL, answers):
        expected = bits_by_enumeration(worlds, observation)
        assert outlook.bits(observation) == pytest.approx(expected, abs=1e-9), observation.id


@few
@given(answers=answers_of_one_oven(SMALL, 4))
def test_the_chance_that_an_oven_has_something_is_that_of_all_worlds(answers):
    question = SMALL.observations["control"]
    kinds = joint_with(SMALL, weighed(SMALL, WORLDS, answers), question, band_of)
    electronic = sum(chance for (option, _), chance in kinds.items() if option == "electronic")
    found = outlook_after(SMALL, answers).applicability({"control": frozenset({"electronic"})})
    assert found == pytest.approx(electronic, abs=1e-9)


def test_what_needs_nothing_is_on_every_oven():
    assert outlook_after(SMALL, {}).applicability({}) == 1.0


@pytest.mark.parametrize("pack", [SMALL, OVEN], ids=["small", "electric oven"])
@few
@given(wishes=strategies.data())
def test_the_bound_is_never_below_what_it_bounds(pack, wishes):
    answers = wishes.draw(fitting_answers(pack))
    outlook = outlook_after(pack, answers)
    for observation in reporting(pack, answers):
        assert outlook.max_bits(observation) >= outlook.bits(observation) - NEARLY_NOTHING


def test_an_answer_that_is_known_already_tells_nothing_more():
    outlook = outlook_after(SMALL, {"control": "electronic"})
    assert outlook.bits(SMALL.observations["control"]) == pytest.approx(0.0, abs=NEARLY_NOTHING)


def test_unlikely_causes_are_left_out_of_the_choice_and_never_out_of_the_belief():
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(expected_information, "MAX_OMITTED_PROBABILITY", 0.5)
        outlook = outlook_after(SMALL, {})
    assert len(outlook.index) < len(outlook.model.hypotheses)
    assert sum(outlook.weights) == pytest.approx(1.0)
    assert min(outlook.belief.probabilities) > 0.0


def test_no_more_causes_than_a_phone_can_weigh_take_part_in_the_choice():
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(expected_information, "MAX_HYPOTHESES", 3)
        outlook = outlook_after(SMALL, {})
    chances = outlook.belief.probabilities
    assert sorted(chances[h] for h in outlook.index) == sorted(chances)[-3:]
