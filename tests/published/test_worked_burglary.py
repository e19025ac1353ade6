"""The burglary network: two neighbours call about an alarm that a burglar or an earthquake may have set off.

Source: Russell and Norvig, Artificial Intelligence: A Modern Approach, chapter on Bayesian networks (after
Pearl 1988). Tables and forward values as on a course's worked page; 0.284 for both neighbours calling is
from memory.

What the engine can say: it reasons over hypotheses (one fault or a pair), not over free networks. The
book's table has a free entry for burglary and earthquake together (0.95), which noisy-MAX of the single
entries is not (1 - 0.06 * 0.71 = 0.9574). A pair in the engine is always noisy-MAX, so exactness needs
"both" as a hypothesis of its own with its own effect; the last test shows what an engine pair gives
instead.
"""

import pytest

from tests.builders import make_observation
from tests.published.worked_packs import YES_NO, cause, chance_of, chance_of_level, switch, worked_model
from triage.engine import infer_belief
from triage.engine.pack import Effect, FaultPair

P_BURGLARY, P_EARTHQUAKE = 0.001, 0.002
BURGLED = ("burglary", "both")
WITNESSES = (
    make_observation("john-calls", YES_NO, reports="alarm", answer_probabilities=((0.05, 0.95), (0.9, 0.1))),
    make_observation("mary-calls", YES_NO, reports="alarm", answer_probabilities=((0.01, 0.99), (0.7, 0.3))),
    make_observation("alarm-heard", YES_NO, reports="alarm", answer_probabilities=((0.0, 1.0), (1.0, 0.0))),
    make_observation("ground-shook", YES_NO, reports="tremor", answer_probabilities=((0.0, 1.0), (1.0, 0.0))),
)


def rings(chance):
    return Effect("alarm", (1.0 - chance, chance))


def burglary_network(burglary_alone=0.94):
    shakes = Effect("tremor", (0.0, 1.0))
    faults = [
        cause("burglary", P_BURGLARY * (1 - P_EARTHQUAKE), effects=(rings(burglary_alone),)),
        cause("earthquake", P_EARTHQUAKE * (1 - P_BURGLARY), effects=(rings(0.29), shakes)),
        cause("both", P_BURGLARY * P_EARTHQUAKE, effects=(rings(0.95), shakes)),
        cause("neither", (1 - P_BURGLARY) * (1 - P_EARTHQUAKE)),
    ]
    return worked_model(faults, [switch("alarm", 0.001), switch("tremor")], WITNESSES)


def test_both_neighbours_calling_makes_a_burglary_likely_but_not_certain():
    belief = infer_belief(burglary_network(), {"john-calls": "yes", "mary-calls": "yes"})
    assert chance_of(belief, *BURGLED) == pytest.approx(0.284172, abs=1e-5)


def test_forward_from_a_burglary_to_what_the_neighbours_do():
    model = burglary_network()
    prior = infer_belief(model, {})
    alarm = sum(chance_of_level(prior, "alarm", "yes", fault) for fault in BURGLED) / chance_of(prior, *BURGLED)
    assert alarm == pytest.approx(0.94002, abs=1e-6)
    assert says_yes("john-calls", alarm) == pytest.approx(0.849017, abs=1e-6)
    assert says_yes("mary-calls", alarm) == pytest.approx(0.6586138, abs=1e-6)


def says_yes(witness, alarm):
    quiet, ringing = next(o.answer_probabilities for o in WITNESSES if o.id == witness)
    return (1.0 - alarm) * quiet[0] + alarm * ringing[0]


def test_an_earthquake_explains_the_alarm_away():
    model = burglary_network()
    heard = infer_belief(model, {"alarm-heard": "yes"})
    shaken = infer_belief(model, {"alarm-heard": "yes", "ground-shook": "yes"})
    assert chance_of(heard, *BURGLED) == pytest.approx(0.373551, abs=1e-5)
    assert chance_of(shaken, *BURGLED) == pytest.approx(0.003268, abs=1e-5)


def test_the_older_edition_of_the_table_gives_the_much_copied_0_376():
    belief = infer_belief(burglary_network(burglary_alone=0.95), {"alarm-heard": "yes"})
    assert chance_of(belief, *BURGLED) == pytest.approx(0.376, abs=5e-4)


def test_with_a_pair_of_the_engine_the_answer_is_that_of_noisy_max():
    faults = [
        cause("burglary", P_BURGLARY * (1 - P_EARTHQUAKE), effects=(rings(0.94),)),
        cause("earthquake", P_EARTHQUAKE * (1 - P_BURGLARY), effects=(rings(0.29),)),
        cause("neither", (1 - P_BURGLARY) * (1 - P_EARTHQUAKE)),
    ]
    pairs = [FaultPair("burglary", "earthquake", P_BURGLARY * P_EARTHQUAKE)]
    model = worked_model(faults, [switch("alarm", 0.001), switch("tremor")], WITNESSES, pairs=pairs)
    belief = infer_belief(model, {"john-calls": "yes", "mary-calls": "yes"})
    both = chance_of_level(infer_belief(model, {}), "alarm", "yes", "burglary+earthquake")
    assert both == pytest.approx(P_BURGLARY * P_EARTHQUAKE * (1 - 0.06 * 0.71))
    # Not the book's table, yet within its printed digits, because both at once is so rare.
    assert belief.faults["burglary"] == pytest.approx(0.284172, abs=1e-5)
