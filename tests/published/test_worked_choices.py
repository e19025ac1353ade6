"""Published worked examples of choosing: what a question is worth, and the order of checks.

Value of information in money (the oil blocks and the drill of the textbooks) is not expressible and so not
here: the engine counts a question's worth in bits about the job and the advice level, not in the gain of a
decision.
"""

from itertools import permutations

import pytest

from tests.builders import ANYWHERE, make_observation, make_task
from tests.published.worked_packs import cause, switch, worked_model
from triage.engine import infer_belief
from triage.engine.next_question import ranked_questions
from triage.engine.pack import Effect
from triage.engine.safety import offered_tasks


# --- what a question is worth
# ---------------------------------------------------------------------------------------
def guests(name, waiting, leaving):
    """How many of the six who wait and the six who leave gave each answer."""
    options = tuple(f"answer-{n}" for n in range(len(waiting)))
    says = (tuple(n / 6 for n in leaving), tuple(n / 6 for n in waiting))
    return make_observation(name, options, reports="state", answer_probabilities=says)


def test_information_gain_of_the_restaurant_example():
    """Russell and Norvig, learning decision trees: how full it is tells 0.541 bit, the kind of food none.
    From memory."""
    questions = [
        guests("patrons", waiting=(0, 4, 2), leaving=(2, 0, 4)),
        guests("food", waiting=(1, 1, 2, 2), leaving=(1, 1, 2, 2)),
    ]
    faults = [cause("wait", 0.5, effects=(Effect("state", (0.0, 1.0)),)), cause("leave", 0.5)]
    belief = infer_belief(worked_model(faults, [switch("state")], questions), {})
    bits = {worth.observation: worth.bits for worth in ranked_questions(belief, {})}
    assert bits["patrons"] == pytest.approx(0.5409, abs=1e-4)
    assert bits.get("food", 0.0) == pytest.approx(0.0, abs=1e-9)


# --- the order of checks
# -------------------------------------------------------------------------------------------- Kadane and
# Simon: with independent costs, one fault and a test after each action, sorting by p/c is optimal. Seen;
# the figures derived. The engine adds one minute of reading to each task, so tasks are one minute shorter
# here.
CHANCES = {"a": 0.5, "b": 0.3, "c": 0.2}
COSTS = {"a": 60, "b": 20, "c": 10}


def expected_cost(order):
    left, total = 1.0, 0.0
    for task in order:
        total += COSTS[task] * left
        left -= CHANCES[task]
    return total


def test_checks_are_offered_in_the_order_that_costs_least():
    tasks = [make_task(t, helps=frozenset({f"fault-{t}"}), minutes=COSTS[t] - 1.0) for t in CHANCES]
    faults = [cause(f"fault-{t}", chance) for t, chance in CHANCES.items()]
    belief = infer_belief(worked_model(faults, tasks=tasks), {})
    offered = tuple(task.id for task in offered_tasks(ANYWHERE, belief, {}))
    costs = {order: expected_cost(order) for order in permutations(CHANCES)}
    assert offered == min(costs, key=costs.get) == ("c", "b", "a")
    assert costs[offered] == pytest.approx(56.0, abs=1e-6)
    assert sorted(costs.values()) == pytest.approx([56.0, 57.0, 64.0, 64.0, 71.0, 72.0], abs=1e-6)
