"""Readings as virtual evidence: pyAgrum, given their likelihoods as soft evidence, comes to the engine's chances."""

import random

import pytest

from tests.builders import electric_oven
from tests.published.places import place
from tests.published.random_trails import random_trail, usable_answers
from tests.published.reference_library import chances_by_library, evidence_of, inference_on, read_by_library
from triage.engine import compile_model, infer_belief

READINGS = {
    "meter-power": ("f11~s60~k1000~b100~p2200", "i200~j1300", "f280~s1050~k1000~p2200"),
    "meter-grill": ("f1~s60~k1000~b100", "i200~j2600~p2300"),
    "fan-run-on": ("h10~s16", "h75", "h10"),
    "preheat-time": ("m28~c200~p2200", "m30~c200~w1"),
    "paper-strip-test": ("psssggxgg", "pgsgggggg"),
    "thermometer-mean": ("c180~r30-172_35-185_40-170_45-186", "c180~r5-60_20-120_40-142_60-148"),
    "thermometer-swing": ("c180~r30-172_35-185_40-170_45-186",),
}


@pytest.mark.parametrize("region", ["iec", "us"])
def test_an_independent_library_comes_to_the_same_chances_with_readings(region, tmp_path):
    model = compile_model(electric_oven(), place(region))
    inference = inference_on(read_by_library(model, tmp_path))
    dice = random.Random(f"readings {region}")
    measured = 0
    for _ in range(40):
        taken = dice.sample(sorted(READINGS), 3)
        trail = [*random_trail(dice, model), *((name, dice.choice(READINGS[name])) for name in taken)]
        answers = usable_answers(model.pack, trail)
        measured += sum(answers.get(name) in READINGS[name] for name in taken)
        theirs = chances_by_library(inference, evidence_of(model, answers))
        assert infer_belief(model, answers).probabilities == pytest.approx(theirs, abs=1e-9), answers
    assert measured > 40
