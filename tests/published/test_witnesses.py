"""One fact told many ways stays one fact, and what nobody can tell apart is not told apart.

The concordant witnesses of one hidden condition may settle what that condition is; they must not each add
their full weight for the cause, as independent facts would. Limits in decibans (3 dB is a factor of two in
the odds).
"""

from math import log10

import pytest

from tests.builders import electric_oven
from tests.published.places import place
from triage.engine import NONE_OF_THESE, SCREEN, compile_model, infer_belief, parse_answers, run_check

CLOSE = 3.0
NEVER_MORE = 5.0
# One state of each group of witnesses: what is told, each telling it in its own way.
SAME_FACT = {
    "heat level: stone cold": {
        "heat-main": "no-heat",
        "preheat-time": "never-gets-there",
        "cooking-result": "all-underdone",
        "meter-power": "near-zero",
    },
    "which heats: the grill is out": {"function-pattern": "grill-or-top-fails", "grill-glow": "grill-none"},
    "door gap: along one edge": {
        "door-edge-heat": "edge-heat",
        "steam-leak": "round-the-door",
        "paper-strip-test": "slips-one-side",
        "torch-gap-test": "light-along-edge",
    },
    "burning: at the wall switch": {"burn-marks": "wall-switch", "smell-type": "plastic-or-fishy"},
    "oven air: still": {"circ-fan-state": "not-turning", "fan-heard": "not-heard"},
    "shared supply: dead": {"hob-state": "hob-dead", "second-cavity": "same-problem"},
}


def decibans(chance):
    return 10.0 * log10(chance / (1.0 - chance))


def weights(answers):
    """Decibans for the leading cause: of all answers together, and of each alone."""
    model = compile_model(electric_oven(), place("iec"))
    together = infer_belief(model, answers)
    cause = together.ranking[0]
    before = decibans(infer_belief(model, {}).faults[cause])
    alone = [decibans(infer_belief(model, {o: a}).faults[cause]) - before for o, a in answers.items()]
    return decibans(together.faults[cause]) - before, alone


@pytest.mark.parametrize("fact", SAME_FACT)
def test_all_who_tell_of_one_fact_weigh_little_more_than_the_best_of_them(fact):
    together, alone = weights(SAME_FACT[fact])
    assert together - max(alone) <= CLOSE, (together, alone)


@pytest.mark.parametrize("fact", [fact for fact, told in SAME_FACT.items() if len(told) > 2])
def test_many_witnesses_weigh_less_than_half_of_what_independent_facts_would(fact):
    together, alone = weights(SAME_FACT[fact])
    assert together < sum(alone) / 2


def states_with_several_witnesses():
    """Every level of every condition that at least two observations tell of with their likeliest answer."""
    pack = electric_oven()
    for condition in pack.conditions.values():
        usual = condition.baseline.index(max(condition.baseline))
        witnesses = [o for o in pack.observations.values() if o.reports == condition.id and not o.task]
        for level, name in enumerate(condition.levels):
            told = {o.id: likeliest(o, level) for o in witnesses if likeliest(o, level) != likeliest(o, usual)}
            answers = parse_answers(pack, told.items()).answers
            if level != usual and len(answers) > 1:
                yield pytest.param(dict(answers), id=f"{condition.id}: {name}")


def likeliest(observation, level):
    chances = observation.answer_probabilities[level]
    return observation.options[chances.index(max(chances))]


@pytest.mark.parametrize("answers", list(states_with_several_witnesses()))
def test_no_state_of_any_condition_is_counted_once_per_witness(answers):
    together, alone = weights(answers)
    assert together - max(alone) <= NEVER_MORE, (together, alone)


# --- what looks alike from outside
# ----------------------------------------------------------------------------------
NO_HEAT = {"complaint": "no-heat", "heat-main": "no-heat"}
NO_HEAT_AT_ALL = NO_HEAT | {"function-pattern": "none-heat", "grill-glow": "grill-none", "control": "mechanical"}
BURNING = {"complaint": "smell", "smell-type": "plastic-or-fishy"}
# For each family of look-alikes, by its first member: a person who told what anyone can, and not what would
# split it.
UNSPLIT = {
    ("fan-element-open", "board-relay-open", "internal-connection-burnt", "selector-contact-burnt"): NO_HEAT
    | {"function-pattern": "fan-fails"},
    ("fan-element-open", "thermostat-open"): NO_HEAT
    | {"control": "mechanical", "heating-system": "fan-only", "grill-control": "energy-regulator"}
    | {"function-pattern": "only-grill-works"},
    ("thermal-cutout-open", "thermostat-open", "programmer-faulty"): NO_HEAT_AT_ALL
    | {"clock": "programmer", "display-state": "time-normal"},
    ("grill-element-open", "energy-regulator-dead"): {"complaint": "grill", "grill-control": "energy-regulator"}
    | {"function-pattern": "grill-or-top-fails", "grill-glow": "grill-none"},
    ("cooling-fan-seized", "cooling-switch-stuck-open"): {"complaint": "hot-outside", "fan-run-on": "no-run-on"}
    | {"outside-heat": "panel-or-knobs-hot"},
    ("thermostat-drifted", "probe-drifted", "user-thermometer"): {"complaint": "too-hot", "heat-main": "bit-hot"}
    | {"thermometer-mean": "hot-15-to-30"},
    ("fan-element-earth-leak", "element-damp", "shared-leakage-rcd"): {"complaint": "trips", "trip-device": "rcd"},
    ("board-or-display-dead", "programmer-faulty"): {"complaint": "panel", "display-state": "blank"}
    | {"clock": "programmer"},
    ("door-seal-worn", "hinge-worn", "door-not-shut"): {"complaint": "door", "door-edge-heat": "edge-heat"},
    ("terminal-block-overheated", "cooker-switch-failed", "plug-lead-damaged"): {"complaint": "cuts-out"}
    | {"heat-main": "cuts-out", "cutout-pattern": "comes-and-goes", "noise-type": "buzz-crackle"},
    ("top-element-open", "element-part-failed"): {"complaint": "grill", "grill-glow": "grill-half"},
    ("keypad-fault", "board-or-display-dead"): {"complaint": "panel", "display-state": "error-code"}
    | {"error-meaning": "code-other", "control": "electronic"},
    ("internal-connection-burnt", "insulation-contaminated", "terminal-block-overheated"): BURNING,
    ("circ-fan-noisy", "circ-fan-blade-loose"): {"complaint": "noise", "noise-when": "with-oven-fan"}
    | {"noise-type": "rattle"},
}


def test_every_family_of_look_alikes_of_the_pack_is_tried():
    assert {frozenset(family) for family in UNSPLIT} == set(electric_oven().look_alikes)


@pytest.mark.parametrize("family", list(UNSPLIT), ids=lambda family: family[0] + " and " + family[-1])
def test_what_looks_alike_is_reported_as_alike_until_something_splits_it(family):
    region = place("iec")
    check = run_check(electric_oven(), region, [*UNSPLIT[family].items(), (SCREEN, NONE_OF_THESE)])
    belief, verdict = check.belief, check.conclusion().verdict
    chances = {fault: round(belief.faults[fault], 3) for fault in family}
    assert belief.ranking[0] in family, belief.ranking[:3]
    assert len(set(verdict.alike) & set(family)) >= 2, (verdict.alike, chances)
    assert verdict.causes[0].chance <= 0.9
