"""An independent library (pyAgrum) reads the exported network and comes to the same chances as the engine.

It knows nothing of the engine: it gets the XMLBIF text and, per trail, the evidence that the export's own
description names. Its exact inference (lazy propagation) shares no code and no method with `believe`.
"""

import random
from collections import Counter

import pytest

from tests.builders import electric_oven
from tests.published.places import place
from tests.published.random_trails import random_trail, usable_answers
from tests.published.reference_library import chances_by_library, evidence_of, inference_on, read_by_library
from triage.engine import CANT_TELL, SCREEN, compile_model, infer_belief

CLOSE = 1e-9
TRAILS_PER_REGION = 200
TRAITS = ("gate", "kind said", "danger page", "danger told", "can't tell")
REGIONS = ("iec", "us", "de", "gb-eng")


def compare(model, inference, answers):
    """The largest difference over every hypothesis and every fault."""
    ours = infer_belief(model, answers)
    theirs = chances_by_library(inference, evidence_of(model, answers))
    faults = dict.fromkeys(model.pack.faults, 0.0)
    for hypothesis, chance in zip(model.hypotheses, theirs, strict=True):
        for fault in hypothesis.faults:
            faults[fault] += chance
    hypotheses = max(abs(a - b) for a, b in zip(ours.probabilities, theirs, strict=True))
    return max(hypotheses, *(abs(ours.faults[f] - chance) for f, chance in faults.items()))


@pytest.mark.parametrize("region", REGIONS)
def test_an_independent_library_comes_to_the_same_chances(region, tmp_path):
    model = compile_model(electric_oven(), place(region))
    inference = inference_on(read_by_library(model, tmp_path))
    dice = random.Random(f"reference {region}")
    seen = Counter(dict.fromkeys(TRAITS, 0))
    for _ in range(TRAILS_PER_REGION):
        answers = usable_answers(model.pack, random_trail(dice, model))
        assert compare(model, inference, answers) <= CLOSE, answers
        seen.update(trait for trait, present in traits(model, answers).items() if present)
    assert min(seen[trait] for trait in TRAITS) >= 5


def traits(model, answers):
    """What makes a trail a harder one."""
    observations = {o: model.pack.observations[o] for o in answers if o != SCREEN}
    told = {o for o in observations if answers[o] != CANT_TELL}
    return {
        "gate": any(observations[o].requires_variant for o in told),
        "kind said": any(observations[o].reports in model.variant_weights for o in told),
        "danger page": SCREEN in answers,
        "danger told": any(answers[o] in observations[o].flags for o in told),
        "can't tell": told != set(observations),
    }


def test_the_comparison_covers_pairs_of_faults_and_notices_a_wrong_number(tmp_path):
    model = compile_model(electric_oven(), place("iec"))
    assert sum(len(h.faults) == 2 for h in model.hypotheses) > 50
    network = read_by_library(model, tmp_path)
    answers = {"heat-main": "no-heat"}
    table = network.cpt("answer-heat-main").toarray()
    table[-1] = table[-1][::-1]
    network.cpt("answer-heat-main").fillWith([float(x) for x in table.flatten()])
    assert compare(model, inference_on(network), answers) > 1e-3
