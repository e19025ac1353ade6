"""The grown tree is the engine's own: every place is what `run_check` says there."""

from dataclasses import replace

import pytest

from tests.builders import ANYWHERE, make_pack
from triage.authoring import decision_tree
from triage.authoring.decision_tree import CannotGrow, grow, outline_rows
from triage.engine.check import Emergency, Question, Result, run_check
from triage.engine.pack import Complaint, Limits

PACK = make_pack(
    complaints=(
        Complaint("stays-cold", {"heats": "no-heat"}, "cavity"),
        Complaint("too-slow", {}, "cavity"),
        Complaint("too-slow", {"lamp-state": "out"}, "cavity"),
    ),
    limits=Limits(max_questions=6, stop_probability=0.97, min_bits=0.001),
)


def quiet(_done):
    pass


def tree(stated=None, complaint=None, depth=2, pack=PACK):
    return grow(pack, ANYWHERE, stated or {}, complaint, depth, quiet)


def every_path(place, trail):
    """Every trail of answers through a place, with the place it leads to."""
    yield place, trail
    for branch in place.edges:
        for answer in branch.answers:
            yield from every_path(branch.node, [*trail, (place.name, answer)])


def test_every_place_is_what_the_engine_says_there():
    grown = tree({"control": "electronic"}, depth=3)
    seen = set()
    for start, line in zip(grown.starts, PACK.complaints, strict=True):
        said = [("control", "electronic"), ("complaint", line.option), *line.answers.items(), ("danger", "none")]
        for place, trail in every_path(start.root, said):
            step = run_check(PACK, ANYWHERE, trail).step
            seen.add(place.kind)
            if isinstance(step, Question):
                assert place.kind in {"ask", "more"}
                assert place.name == step.observation
            elif isinstance(step, Emergency):
                assert (place.kind, place.name) == ("make-safe", step.flags[0].id)
            else:
                assert isinstance(step, Result)
                assert (place.kind, place.name, place.band) == (
                    "advice",
                    step.verdict.family,
                    step.verdict.band.value,
                )
    assert seen == {"ask", "more", "advice", "make-safe"}


def test_every_answer_stands_in_exactly_one_branch_and_not_knowing_is_one():
    for start in tree().starts:
        for place, _ in every_path(start.root, []):
            if place.kind == "ask":
                answers = [answer for branch in place.edges for answer in branch.answers]
                assert sorted(answers) == sorted([*PACK.observations[place.name].options, "cant-tell"])


def test_equal_places_are_one_and_are_counted():
    grown = tree(depth=3)
    different = {id(place) for start in grown.starts for place, _ in every_path(start.root, [])}
    assert len(different) == grown.different < grown.grown
    written = [line for line in outline_rows(grown) if line.node.edges and not line.same_as]
    assert len({id(line.node) for line in written}) == len(written)


def test_lines_are_numbered_and_point_back_to_what_was_written():
    lines = list(outline_rows(tree(depth=3)))
    numbers = [line.number for line in lines]
    assert numbers[:2] == ["1", "1.1"]
    assert "1.2.1" in numbers
    assert len(set(numbers)) == len(numbers)
    by_number = {line.number: line for line in lines}
    assert all(by_number[line.same_as].node is line.node for line in lines if line.same_as)


def test_one_complaint_grows_from_each_of_its_lines_alone():
    grown = tree(complaint="too-slow")
    assert [(start.line, start.option) for start in grown.starts] == [(1, "too-slow"), (2, "too-slow")]


def test_what_is_stated_is_not_asked():
    grown = tree({"control": "mechanical"}, depth=4)
    assert "control" not in {line.node.name for line in outline_rows(grown)}
    assert "control" in {line.node.name for line in outline_rows(tree(depth=4))}


@pytest.mark.parametrize(
    ("stated", "complaint", "depth", "said"),
    [
        ({"colour": "red"}, None, 2, "There is no kind of oven called colour. Known: control."),
        ({"element-view": "hidden"}, None, 2, "There is no kind of oven called element-view. Known: control."),
        ({"control": "steam"}, None, 2, "control has no steam. Known: mechanical, electronic."),
        ({}, "sings", 2, "There is no complaint sings. Known: stays-cold, too-slow."),
        ({}, None, 0, "A depth of 0 cannot be drawn. Choose 1 to 6."),
        ({}, None, 7, "A depth of 7 cannot be drawn. Choose 1 to 6."),
    ],
)
def test_what_the_pack_does_not_have_is_refused(stated, complaint, depth, said):
    with pytest.raises(CannotGrow) as refused:
        tree(stated, complaint, depth)
    assert str(refused.value) == said


def test_a_tree_nobody_could_read_is_refused(monkeypatch):
    monkeypatch.setattr(decision_tree, "MAX_NODES", 10)
    with pytest.raises(CannotGrow, match="more than 10 places"):
        tree(depth=4)


def test_progress_is_told_and_a_caution_stays_with_the_advice():
    done = []
    grow(PACK, ANYWHERE, {}, None, 1, done.append)
    assert done == list(range(1, len(done) + 1))
    settled = replace(
        PACK,
        limits=Limits(max_questions=6, stop_probability=0.1),
        complaints=(Complaint("too-slow", {"pane": "loose"}, "x"),),
    )
    (start,) = tree(pack=settled).starts
    assert (start.root.kind, start.root.flags) == ("advice", ("loose-pane",))
