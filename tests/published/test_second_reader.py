"""A second independent library (pgmpy) reads the exported network and comes to the same chances.

pyAgrum computes with a junction tree in C++, pgmpy by eliminating variables in Python; neither shares code with the
other or with `believe`, and each has a reader of the format of its own.
"""

import random

import pytest

from tests.builders import electric_oven
from tests.published.places import place
from tests.published.random_trails import random_trail, usable_answers
from tests.published.reference_library import chances_by_library, evidence_of, inference_on, read_by_library
from tests.published.second_reader import chances_by_elimination, elimination_on
from triage.engine import compile_model, infer_belief
from triage.knowledge.exports import cause_name

CLOSE = 1e-9
TRAILS = 40


def largest_difference(ours, theirs):
    assert set(ours) == set(theirs)
    return max(abs(ours[name] - theirs[name]) for name in ours)


@pytest.mark.parametrize("region", ["gb-eng", "us"])
def test_it_comes_to_the_same_chances_on_random_trails(region, tmp_path):
    model = compile_model(electric_oven(), place(region))
    elimination, inference = elimination_on(model, tmp_path), inference_on(read_by_library(model, tmp_path))
    names = [cause_name(hypothesis) for hypothesis in model.hypotheses]
    dice = random.Random(f"second reader {region}")
    lengths = []
    for _ in range(TRAILS):
        answers = usable_answers(model.pack, random_trail(dice, model))
        evidence = evidence_of(model, answers)
        theirs = chances_by_elimination(elimination, evidence)
        ours = dict(zip(names, infer_belief(model, answers).probabilities, strict=True))
        assert largest_difference(ours, theirs) <= CLOSE, answers
        first = dict(zip(names, chances_by_library(inference, evidence), strict=True))
        assert largest_difference(first, theirs) <= CLOSE, answers
        lengths.append(len(answers))
    assert max(lengths) > 10


def test_a_wrong_number_would_be_noticed(tmp_path):
    model = compile_model(electric_oven(), place("iec"))
    elimination = elimination_on(model, tmp_path)
    names = [cause_name(hypothesis) for hypothesis in model.hypotheses]
    theirs = chances_by_elimination(elimination, {"answer-heat-main": "too-hot"})
    ours = dict(zip(names, infer_belief(model, {"heat-main": "no-heat"}).probabilities, strict=True))
    assert largest_difference(ours, theirs) > 1e-3
