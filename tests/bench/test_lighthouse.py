"""What is made of Lighthouse's reports; the program itself is fetched by who wants its scores, and not by the tests."""

import pytest

from tests.bench import lighthouse
from tests.bench.lighthouse import CATEGORIES, lacking, scores_of, show

NONE_LACKING = {"score": 1, "title": "Nothing is in the way"}


def report(performance, **audits):
    """As Lighthouse 12 writes it, with the categories but one full."""
    categories = {name: {"score": 1, "auditRefs": []} for name in CATEGORIES}
    categories["performance"] = {
        "score": performance,
        "auditRefs": [{"id": "paint", "weight": 10}, {"id": "hint", "weight": 0}],
    }
    return {"categories": categories, "audits": audits}


def test_a_score_is_the_median_of_the_runs():
    scores = scores_of([report(0.97), report(1), report(0.99)])
    assert scores == {"performance": 99, "accessibility": 100, "best-practices": 100, "seo": 100}


def test_a_category_that_could_not_be_worked_out_counts_as_nothing():
    assert scores_of([report(None)])["performance"] == 0


def test_each_audit_below_full_is_named_from_the_middle_run_and_whether_it_counts():
    slow = {"score": 0.98, "title": "First Contentful Paint", "displayValue": "1.3 s"}
    hint = {"score": 0, "title": "Render blocking requests"}
    not_asked = {"score": None, "title": "By hand"}
    middle = report(0.99, paint=slow, hint=hint, done=NONE_LACKING, by_hand=not_asked)
    assert list(lacking([report(1), middle, report(0.5)])) == [
        "0.98 (counts) First Contentful Paint 1.3 s",
        "0.00 (a hint) Render blocking requests",
    ]


def test_a_page_is_good_only_where_all_is_full(capsys):
    assert show("start", [report(1, paint=NONE_LACKING)])
    assert not show("start", [report(0.99)])
    assert capsys.readouterr().out.splitlines()[1].startswith("start: performance 99, ")


def test_without_the_program_its_remedy_is_said(monkeypatch, tmp_path):
    monkeypatch.setattr(lighthouse, "PROGRAM", tmp_path / "lighthouse")
    with pytest.raises(SystemExit, match="with `npm install --prefix"):
        lighthouse.main()
