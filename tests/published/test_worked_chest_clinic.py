"""The chest clinic ("Asia"): three diseases, two risks, two signs.

Source: Lauritzen and Spiegelhalter, "Local computations with probabilities on graphical structures",
Journal of the Royal Statistical Society B, 1988; tables as shipped with pgmpy and gRain. Marginals of the
diseases and the chance of the evidence as in gRain's own tests; the other figures recomputed from the same
tables.

What the engine can say: each combination of the three diseases is one hypothesis, so "either" needs no
node; the visit to Asia and smoking are variants whose `favoured` factors are the tables' entries. The joint
is then exact and every posterior of tub, lung and bronc can be checked. Three diseases from engine pairs
could not be: a hypothesis holds two faults at most, and shortness of breath is not noisy-MAX of its causes.
"""

import pytest

from tests.builders import make_observation
from tests.published.worked_packs import YES_NO, cause, chance_of, chance_of_level, switch, worked_model
from triage.engine import infer_belief
from triage.engine.pack import Effect, Variant

ASIA = Variant("asia", YES_NO, (0.01, 0.99))
SMOKE = Variant("smoke", YES_NO, (0.5, 0.5))
TUB, LUNG, BRONC = {"yes": 0.05, "no": 0.01}, {"yes": 0.1, "no": 0.01}, {"yes": 0.6, "no": 0.3}
DYSPNOEA = {(True, True): 0.9, (True, False): 0.7, (False, True): 0.8, (False, False): 0.1}
SURE = ((1.0, 0.0), (0.0, 1.0))
SIGNS = (
    make_observation("dyspnoea", YES_NO, reports="breath", answer_probabilities=((0.0, 1.0), (1.0, 0.0))),
    make_observation("xray", YES_NO, reports="shadow", answer_probabilities=((0.0, 1.0), (1.0, 0.0))),
    make_observation("asia", YES_NO, reports="asia", answer_probabilities=SURE),
    make_observation("smoke", YES_NO, reports="smoke", answer_probabilities=SURE),
)


def patient(tub, lung, bronc):
    """One combination of diseases; its name lists them."""
    name = "-".join(d for d, has in (("tub", tub), ("lung", lung), ("bronc", bronc)) if has) or "well"
    breath, shadow = DYSPNOEA[tub or lung, bronc], 0.98 if tub or lung else 0.05
    return cause(
        name,
        1.0,
        rate_multipliers={
            "asia": {option: has(tub, TUB[option]) for option in YES_NO},
            "smoke": {option: has(lung, LUNG[option]) * has(bronc, BRONC[option]) for option in YES_NO},
        },
        effects=(Effect("breath", (1 - breath, breath)), Effect("shadow", (1 - shadow, shadow))),
    )


def has(ill, chance):
    return chance if ill else 1.0 - chance


@pytest.fixture
def clinic():
    either = (True, False)
    patients = [patient(tub, lung, bronc) for tub in either for lung in either for bronc in either]
    return worked_model(patients, [switch("breath"), switch("shadow")], SIGNS, [ASIA, SMOKE])


def diseases(belief):
    return [chance_of(belief, *(f for f in belief.faults if d in f.split("-"))) for d in ("tub", "lung", "bronc")]


@pytest.mark.parametrize(
    ("answers", "published", "tolerance"),
    [
        ({}, (0.0104, 0.055, 0.45), 1e-9),
        ({"asia": "yes", "dyspnoea": "yes"}, (0.087751, 0.099525, 0.811402), 1e-6),
        ({"asia": "yes", "dyspnoea": "yes", "xray": "yes"}, (0.391712, 0.444271, 0.628822), 1e-6),
        ({"asia": "yes", "dyspnoea": "yes", "xray": "no"}, (0.002249, 0.00255, 0.862761), 1e-6),
    ],
)
def test_the_diseases_of_the_chest_clinic(clinic, answers, published, tolerance):
    assert diseases(infer_belief(clinic, answers)) == pytest.approx(published, abs=tolerance)


def test_the_signs_of_the_chest_clinic_before_anything_is_known(clinic):
    prior = infer_belief(clinic, {})
    either = chance_of(prior, *(f for f in prior.faults if {"tub", "lung"} & set(f.split("-"))))
    assert either == pytest.approx(0.064828, abs=1e-6)
    assert chance_of_level(prior, "shadow", "yes") == pytest.approx(0.11029, abs=1e-6)
    assert chance_of_level(prior, "breath", "yes") == pytest.approx(0.435971, abs=1e-6)


def test_the_chance_of_the_evidence_itself(clinic):
    """The engine keeps no chance of the evidence: it is the prior share times that of the second answer."""
    breathless = chance_of_level(infer_belief(clinic, {"asia": "yes"}), "breath", "yes")
    assert ASIA.shares[0] * breathless == pytest.approx(0.004501375, abs=1e-12)
