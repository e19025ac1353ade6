"""What one visit says about each number: against an independent library and the textbook's exact posterior."""

import pytest
from scipy.stats import dirichlet

from tests.builders import ANYWHERE, PACK
from tests.learning.visits import SMALL_REGIONS, real_regions, visit, written_library
from tests.published.reference_library import evidence_of, pyagrum, read_by_library
from triage.engine.belief import infer_belief
from triage.engine.model import compile_model
from triage.knowledge.exports import CAUSE, cause_name, kind_name
from triage.learning.expected_counts import Counter, level_shares
from triage.learning.shrinkage import PRIOR_WEIGHT, dirichlet_mean

MODEL = compile_model(PACK, ANYWHERE)
COUNTER = Counter(PACK, SMALL_REGIONS)
SEEN = {"complaint": "stays-cold", "heats": "less", "meter": "low", "screen-shows": "letters", "danger": "none"}


@pytest.mark.parametrize("h", range(len(MODEL.hypotheses)), ids=[cause_name(h) for h in MODEL.hypotheses])
@pytest.mark.parametrize("condition", ["heat", "trouble", "display"])
def test_levels_given_the_faults_and_the_answers_are_those_of_an_independent_library(h, condition, tmp_path):
    """pyAgrum 3.3.1, by lazy propagation on the exported network."""
    belief = infer_belief(MODEL, SEEN)
    inference = pyagrum.LazyPropagation(read_by_library(MODEL, tmp_path))
    nodes = {f"condition-{condition}"}
    given = PACK.conditions[condition].parent
    nodes |= {kind_name(given)} if given else set()
    inference.addJointTarget(nodes)
    inference.setEvidence(evidence_of(MODEL, SEEN) | {CAUSE: cause_name(MODEL.hypotheses[h])})
    inference.makeInference()
    joint = inference.jointPosterior(nodes)
    options = PACK.variants[given].options if given else (None,)
    for option, row in zip(options, level_shares(belief, h, PACK.conditions[condition]), strict=True):
        for level, share in zip(PACK.conditions[condition].levels, row, strict=True):
            place = {f"condition-{condition}": level} | ({kind_name(given): option} if given else {})
            assert share == pytest.approx(joint[place], abs=1e-9)


def test_one_visit_moves_an_effect_to_the_exact_posterior_mean():
    """The posterior is a mixture of Dirichlets, one per level the oven may have had; scipy.stats.dirichlet gives the
    mean of each."""
    alone = {"complaint": "stays-cold"}
    old = COUNTER.effects["element-open", "trouble", None]
    said = [row[2] for row in PACK.observations["complaint"].answer_probabilities]
    weights = [level * chance for level, chance in zip(old, said, strict=True)]
    exact = [0.0] * len(old)
    for level, weight in enumerate(weights):
        counts = [PRIOR_WEIGHT * share + (place == level) for place, share in enumerate(old)]
        exact = [so_far + weight / sum(weights) * m for so_far, m in zip(exact, dirichlet(counts).mean(), strict=True)]
    counted = COUNTER.count(visit("element-open", alone)).effects["element-open", "trouble", None]
    assert dirichlet_mean(old, PRIOR_WEIGHT, counted) == pytest.approx(exact, abs=1e-12)


def test_an_effect_of_one_kind_of_oven_counts_by_how_likely_the_oven_is_of_that_kind():
    counts = COUNTER.count(visit("element-open", {"heats": "no-heat"}))
    special = sum(counts.effects["element-open", "heat", frozenset({"electronic"})])
    assert special + sum(counts.effects["element-open", "heat", None]) == pytest.approx(1.0)
    told = COUNTER.count(visit("element-open", {"heats": "no-heat", "control": "electronic"}))
    assert sum(told.effects["element-open", "heat", frozenset({"electronic"})]) == pytest.approx(1.0)
    assert ("element-open", "heat", None) not in told.effects or not any(told.effects["element-open", "heat", None])


def test_silence_and_not_knowing_are_no_counts():
    counts = COUNTER.count(visit("element-open", {"heats": "cant-tell", "danger": "none"}))
    assert (counts.effects, counts.answers) == ({}, {})


def test_an_answer_counts_once_shared_over_the_levels():
    counts = COUNTER.count(visit("element-open", {"heats": "less"}))
    rows = [counts.answers["heats", level] for level in ("full", "half", "none")]
    assert sum(row[1] for row in rows) == pytest.approx(1.0)
    assert all(row[0] == row[2] == 0.0 for row in rows)


def test_a_pair_teaches_the_answers_but_not_the_effects_of_either():
    counts = COUNTER.count(visit(("element-open", "lamp-failed"), {"heats": "less", "lamp-state": "out"}))
    assert counts.effects == {}
    assert {key[0] for key in counts.answers} == {"heats", "lamp-state"}


@pytest.mark.parametrize(
    ("found", "answers"),
    [
        pytest.param("element-arcing", {"complaint": "stays-cold"}, id="effects of a dangerous fault"),
        pytest.param("programmer-not-set", {"did-set-clock": "fixed"}, id="effects of a cure"),
        pytest.param("thermostat-drifted", {"screen-shows": "letters"}, id="a condition the fault says nothing of"),
    ],
)
def test_what_stays_as_written_is_not_counted(found, answers):
    assert COUNTER.count(visit(found, answers)).effects == {}


def test_answers_with_a_danger_sign_and_task_outcomes_and_kinds_are_not_counted():
    answers = {"sparks": "no-sparks", "did-set-clock": "fixed", "control": "electronic"}
    assert COUNTER.count(visit("programmer-not-set", answers)).answers == {}


def test_a_level_that_cannot_exist_on_an_oven_says_nothing_there():
    assert COUNTER.count(visit("board-dead", {"screen-shows": "letters"})).effects[
        "board-dead", "display", None
    ] == pytest.approx([0.3 * 0.02 / 0.671, 0.7 * 0.95 / 0.671])
    on_mechanical = {"screen-shows": "clock-time", "control": "mechanical"}
    assert COUNTER.count(visit("board-dead", on_mechanical)).effects == {}


def test_a_finding_the_pack_holds_impossible_teaches_no_frequencies():
    counts = COUNTER.count(visit("thermostat-drifted", {"control": "electronic", "heats": "less"}))
    assert (counts.effects, counts.answers) == ({}, {})


def test_a_reading_teaches_effects_but_no_row_of_answers():
    known = written_library()
    counter = Counter(known.pack, real_regions())
    taken = visit("thermostat-drifted", {"preheat-time": "m30~c200"}, region="gb-eng")
    counts = counter.count(taken)
    assert sum(counts.effects["thermostat-drifted", "heat-level", None]) == pytest.approx(1.0)
    assert counts.answers == {}
