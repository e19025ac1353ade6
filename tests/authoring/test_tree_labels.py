"""The tree speaks as the pages do, and keeps the ids an author looks for."""

from tests.authoring.grown_tree import no_heat_tree, words
from triage.authoring.decision_tree import Edge, Node, OutlineRow, Start, Tree
from triage.knowledge.library import library


def line(place, asked="", answers=(), same_as=""):
    return OutlineRow("1.1", Start(0, "no-heat", place), asked, answers, place, same_as)


def test_a_question_is_the_one_people_read_with_its_id():
    ask = Node("ask", "heat-main", edges=(Edge(("no-heat",), Node("more", "lamp-state")),))
    assert words().node(line(ask)) == "How hot does the oven get? [heat-main]"
    assert words().node(line(ask, same_as="2.3")) == "As at 2.3: heat-main"
    assert words().node(line(Node("more", "lamp-state"))).startswith("Asks on: ")


def test_answers_are_the_labels_and_not_knowing_is_said():
    told = line(Node("more", "lamp-state"), "heat-main", ("no-heat", "too-little", "cant-tell"))
    assert words().answers(told) == "No heat at all / Warm, but not hot enough / Can't tell"


def test_an_ending_names_the_band_the_family_and_the_caution():
    advice = Node("advice", "fan-element", "qualified", ("tripped",))
    assert words().node(line(advice)) == "Advice, qualified: Fan oven element [fan-element], caution tripped"
    assert words().node(line(Node("make-safe", "shock", "make-safe"))).startswith("MAKE SAFE: ")
    assert words().node(line(Node("exit", "gas-oven"))) == "Another appliance: gas-oven"


def test_a_signer_reads_version_region_and_depth():
    first, danger, counts = words().provenance(no_heat_tree())
    assert library().pack.version in first
    assert "region gb-eng; depth 2." in first
    assert "danger" in danger
    assert f"{no_heat_tree().grown} places" in counts


def test_the_title_names_the_kind_of_oven():
    assert words().title(no_heat_tree()).endswith("for heating-system fan-only, control mechanical")
    assert words().title(Tree({}, 1, (), 0, 0)).endswith("for any kind of oven")
