"""Published worked examples of single steps: combining causes, weights of evidence, what a question is worth,
the order of checks.

Each names its source. Jeffrey's rule is not expressible, as the engine takes answers as likelihoods only.
"""

from itertools import product

import pytest

from tests.builders import make_observation
from tests.published.worked_packs import YES_NO, cause, switch, worked_model
from triage.engine import infer_belief
from triage.engine.explanation import weights_of_evidence
from triage.engine.pack import Effect, FaultPair
from triage.engine.tables import noisy_max

IS_SO = Effect("state", (0.0, 1.0))


def two_causes(prior, *likelihoods):
    """A model of `so` with this prior against `not-so`, and for each pair (P(yes | so), P(yes | not)) a
    witness."""
    witnesses = [
        make_observation(f"sign-{n}", YES_NO, reports="state", answer_probabilities=((other, 1 - other), (so, 1 - so)))
        for n, (so, other) in enumerate(likelihoods, 1)
    ]
    faults = [cause("so", prior, effects=(IS_SO,)), cause("not-so", 1.0 - prior)]
    return worked_model(faults, [switch("state")], witnesses)


# --- causal independence
# -------------------------------------------------------------------------------------------- Russell and
# Norvig, Artificial Intelligence: A Modern Approach: fever from cold, flu and malaria, inhibited with 0.6,
# 0.2 and 0.1. The table's eight rows in the order cold, flu, malaria; seen.
INHIBITED = (0.6, 0.2, 0.1)
FEVER = (0.0, 0.9, 0.8, 0.98, 0.4, 0.94, 0.88, 0.988)


@pytest.mark.parametrize(("ill", "fever"), list(zip(product((False, True), repeat=3), FEVER, strict=True)))
def test_noisy_or_of_cold_flu_and_malaria(ill, fever):
    """A leak of zero stands for "nothing", so that the row without an illness has something to combine."""
    causes = [(q, 1.0 - q) for q, has in zip(INHIBITED, ill, strict=True) if has]
    assert noisy_max([(1.0, 0.0), *causes])[1] == pytest.approx(fever, abs=1e-9)


def test_noisy_or_with_a_leak():
    """Leak 0.05 beside flu; derived. `combine` takes a leak as one more cause. The compiled model has none:
    a cause that speaks about a condition replaces how a sound oven is."""
    assert noisy_max([(0.95, 0.05), (0.2, 0.8)])[1] == pytest.approx(0.81, abs=1e-9)


def test_a_pair_of_the_engine_is_that_noisy_or():
    faults = [
        cause("cold", 0.4, effects=(Effect("fever", (0.6, 0.4)),)),
        cause("flu", 0.4, effects=(Effect("fever", (0.2, 0.8)),)),
    ]
    model = worked_model(faults, [switch("fever")], pairs=[FaultPair("cold", "flu", 0.2)])
    (table,) = model.level_tables["fever"]
    assert [table.distinct[i][1] for i in table.index] == pytest.approx([0.4, 0.8, 0.88], abs=1e-9)


def test_noisy_max_of_two_causes_on_three_levels():
    """Levels none, mild, severe. The definition is Diez 1993 (from memory), the figures derived from it."""
    assert noisy_max([(0.2, 0.5, 0.3), (0.4, 0.4, 0.2)]) == pytest.approx((0.08, 0.48, 0.44), abs=1e-9)


# --- weight of evidence
# ---------------------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("likely", "unlikely", "decibans"), [(0.5, 0.05, 10.0), (0.4, 0.2, 3.0103), (0.4, 0.5, -0.9691)]
)
def test_a_likelihood_ratio_in_decibans(likely, unlikely, decibans):
    """Good 1950: ten times the common logarithm of the Bayes factor; ratios 10, 2 and 0.8. Seen."""
    model = two_causes(0.3, (likely, unlikely))
    (weight,) = weights_of_evidence(model, {"sign-1": "yes"}, ("so",))["so"]
    assert weight.decibans == pytest.approx(decibans, abs=1e-4)


def test_five_bad_widgets_in_a_row():
    """Jaynes, Probability Theory, chapter 4: one machine in eleven makes a third bad, the others a sixth. The
    hypotheses seen, the figures derived."""
    model = two_causes(1 / 11, *[(1 / 3, 1 / 6)] * 6)
    good = weights_of_evidence(model, {"sign-1": "no"}, ("so",))["so"]
    bad = {f"sign-{n}": "yes" for n in range(1, 6)}
    weights = weights_of_evidence(model, bad, ("so",))["so"]
    assert good[0].decibans == pytest.approx(-0.9691, abs=1e-4)
    assert [weight.decibans for weight in weights] == pytest.approx([3.0103] * 5, abs=1e-4)
    assert -10.0 + sum(weight.decibans for weight in weights) == pytest.approx(5.0515, abs=1e-4)
    assert infer_belief(model, bad).faults["so"] == pytest.approx(0.761905, abs=1e-4)


@pytest.mark.parametrize("likelihoods", [(0.6, 0.2), (0.3, 0.1)])
def test_virtual_evidence_multiplies_the_odds_whatever_its_scale(likelihoods):
    """Pearl's virtual evidence as described by Chan and Darwiche; figures derived. "75 % sure" taken as a
    likelihood ratio of 3 gives 0.5625, not the 0.75 that Jeffrey's rule would set."""
    assert infer_belief(two_causes(0.3, likelihoods), {"sign-1": "yes"}).faults["so"] == pytest.approx(0.5625, abs=1e-9)


def test_not_sure_is_neutral():
    """Equal likelihoods leave the chances as they are; so does "can't tell", which is no evidence at all."""
    model = two_causes(0.3, (0.5, 0.5), (0.9, 0.1))
    assert infer_belief(model, {"sign-1": "yes"}).faults["so"] == pytest.approx(0.3, abs=1e-12)
    assert infer_belief(model, {"sign-2": "cant-tell"}).faults["so"] == pytest.approx(0.3, abs=1e-12)


def test_a_rare_cause_stays_rare_after_one_fair_sign():
    """Eddy 1982, screening mammography: 1 in 100, found in 80 %, false alarm in 9.6 %. From memory."""
    belief = infer_belief(two_causes(0.01, (0.8, 0.096)), {"sign-1": "yes"})
    assert belief.faults["so"] == pytest.approx(0.0776, abs=1e-4)
