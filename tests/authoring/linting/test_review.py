"""The whole review: every kind of weakness at once, the gravest first."""

import shutil

from tests.builders import ELECTRIC_OVEN
from triage.authoring.linting.finding import Gravity
from triage.authoring.linting.review import asked_in, refusals, review
from triage.knowledge.library import REGIONS, library, load_library
from triage.knowledge.problems import PackProblem, PackProblems


def test_the_pack_people_use_has_remarks_and_no_mistake():
    done = []
    found = review(library(), ELECTRIC_OVEN, REGIONS, 40, 1, done.append)
    assert done == list(range(1, 41))
    assert {f.gravity for f in found} == {Gravity.REMARK}
    assert {f.kind for f in found} == {"weightless", "never asked", "language"}


def test_several_weaknesses_are_found_at_once_and_mistakes_stand_first(tmp_path):
    copy = shutil.copytree(ELECTRIC_OVEN, tmp_path / "electric_oven")
    change(copy / "faults.yaml", "  calls_per_1000: 136\n", "  calls_per_1000: 1\n")
    change(copy / "text/en/observations.yaml", "How hot does the oven get?\n", f"{'Incomprehensibly ' * 4}hot?\n")
    (copy / "trade_order.yaml").write_text("provenance: me\n", "utf-8")
    found = review(load_library(copy), copy, REGIONS, 0, 1, print)
    assert [f.kind for f in found if f.gravity is Gravity.MISTAKE] == ["wording", "refused"]
    (copy / "trade_order.yaml").write_text("provenance: me\norder: [[fan-element-open], [door-not-shut]]\n", "utf-8")
    assert "trade order" in {f.kind for f in review(load_library(copy), copy, REGIONS, 0, 1, print)}


def change(file, old, new):
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), "utf-8")


def test_the_same_checks_put_the_same_questions():
    one, other = (asked_in(library(), 30, 7, lambda _done: None) for _ in range(2))
    assert one == other
    assert "complaint" in one
    assert len(one) > 20


def test_what_the_loader_refuses_is_a_mistake_each():
    problems = [
        PackProblem("a.yaml", 1, "x", "is wrong.", "Mend it."),
        PackProblem("b.yaml", 2, "y", "is odd.", "Mend it."),
    ]
    found = refusals(PackProblems(problems))
    assert [(f.gravity, f.kind, f.problem) for f in found] == [(Gravity.MISTAKE, "refused", p) for p in problems]
