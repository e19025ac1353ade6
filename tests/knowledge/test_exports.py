"""The exported network says in standard form what the engine's model holds."""

from itertools import product
from xml.etree import ElementTree

import pytest

from tests.builders import ANYWHERE, make_pack
from triage.engine import compile_model, infer_belief
from triage.knowledge.exports import dismissed_dangers, to_xmlbif


@pytest.fixture
def model():
    return compile_model(make_pack(), ANYWHERE)


@pytest.fixture
def network(model):
    return ElementTree.fromstring(to_xmlbif(model)).find("NETWORK")


def outcomes_of(network):
    variables = network.findall("VARIABLE")
    return {v.findtext("NAME"): [outcome.text for outcome in v.findall("OUTCOME")] for v in variables}


def parents_of(network):
    return {d.findtext("FOR"): [given.text for given in d.findall("GIVEN")] for d in network.findall("DEFINITION")}


def table_of(network, name):
    """Parents' outcomes to the chances of the node's own outcomes."""
    outcomes, parents = outcomes_of(network), parents_of(network)[name]
    definition = next(d for d in network.findall("DEFINITION") if d.findtext("FOR") == name)
    numbers = list(map(float, definition.findtext("TABLE").split()))
    size = len(outcomes[name])
    rows = [tuple(numbers[start : start + size]) for start in range(0, len(numbers), size)]
    return dict(zip(product(*(outcomes[parent] for parent in parents)), rows, strict=True))


def test_the_document_says_which_version_of_which_pack_it_is(model, network):
    root = ElementTree.fromstring(to_xmlbif(model))
    assert (root.tag, root.get("VERSION")) == ("BIF", "0.3")
    assert network.findtext("NAME") == "small-oven-test-1-anywhere"


def test_the_causes_are_the_hypotheses_with_their_chance_before_any_answer(model, network):
    prior = infer_belief(model, {}).probabilities
    assert outcomes_of(network)["cause"][-2:] == ["element-open+lamp-failed", "element-arcing+board-dead"]
    assert table_of(network, "cause")[()] == pytest.approx(prior, abs=1e-15)


def test_a_kind_of_oven_depends_on_the_cause(network):
    table = table_of(network, "kind-control")
    assert table[("board-dead",)] == (0.0, 1.0)
    assert table[("element-open",)] == pytest.approx((0.6, 0.4))
    # Twice as often on electronic ovens: 0.6 * 1 against 0.4 * 2.
    assert table[("programmer-not-set",)] == pytest.approx((0.6 / 1.4, 0.8 / 1.4))


def test_a_condition_depends_on_the_cause_and_on_the_kind_its_effects_name(network):
    assert parents_of(network)["condition-lamp"] == ["cause"]
    assert parents_of(network)["condition-heat"] == ["cause", "kind-control"]
    table = table_of(network, "condition-heat")
    assert table[("element-open", "mechanical")] == pytest.approx((0.05, 0.15, 0.8))
    assert table[("element-open", "electronic")] == pytest.approx((0.1, 0.7, 0.2))
    assert table[("lamp-failed", "electronic")] == pytest.approx((0.9, 0.08, 0.02))


def test_a_level_that_a_kind_cannot_show_has_no_chance_there(network):
    assert table_of(network, "condition-display")[("lamp-failed", "mechanical")] == (1.0, 0.0)


def test_an_answer_depends_only_on_what_it_reports(network):
    assert parents_of(network)["answer-heats"] == ["condition-heat"]
    assert parents_of(network)["answer-control"] == ["kind-control"]
    assert table_of(network, "answer-heats")[("half",)] == pytest.approx((0.2, 0.7, 0.1))
    assert table_of(network, "answer-control")[("electronic",)] == (0.0, 1.0)


def test_records_that_report_nothing_are_left_out(network):
    assert not {"answer-cold", "answer-shock", "answer-fuel"} & set(outcomes_of(network))


def test_every_row_sums_to_one_and_every_parent_stands_before_its_child(network):
    names = list(outcomes_of(network))
    for name, parents in parents_of(network).items():
        assert all(names.index(parent) < names.index(name) for parent in parents)
        assert all(sum(row) == pytest.approx(1.0, abs=1e-15) for row in table_of(network, name).values())


def test_numbers_keep_every_digit(model, network):
    assert table_of(network, "answer-meter")[("none",)] == make_pack().observations["meter"].answer_probabilities[2]


def test_the_same_model_gives_the_same_text(model):
    compile_model.cache_clear()
    assert to_xmlbif(model) == to_xmlbif(compile_model(make_pack(), ANYWHERE))


def test_none_of_these_leaves_the_answers_that_do_not_end_the_check(model):
    # A single flash only limits use; the bright spot is what the danger page asks about.
    assert dismissed_dangers(model) == {"sparks": (1.0, 1.0, 0.0)}
