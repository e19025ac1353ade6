"""What is made of Lighthouse's reports; the program itself is fetched by who wants its scores, and not by the tests."""

from tests.bench.lighthouse import CATEGORIES, lacking, scores_of, show


def report(performance, **audits):
    """As Lighthouse 12 writes it, with the categories but one full."""
    categories = {name: {"score": 1, "auditRefs": []} for name in CATEGORIES}
    categories["performance"] = {
        "score": performance,
        "auditRefs": [{"id": "paint", "weight": 10}, {"id": "hint", "weight": 0}],
    }
    return {"categories": categories, "audits": audits}


def test_a_page_is_good_only_where_the_median_score_is_full_and_what_lacks_is_named(capsys):
    slow = {"score": 0.98, "title": "First Contentful Paint", "displayValue": "1.3 s"}
    middle = report(0.99, paint=slow, hint={"score": 0, "title": "Render blocking requests"})
    assert scores_of([report(None)])["performance"] == 0
    assert scores_of([report(1), middle, report(0.5)])["performance"] == 99
    assert list(lacking([report(1), middle, report(0.5)])) == [
        "0.98 (counts) First Contentful Paint 1.3 s",
        "0.00 (a hint) Render blocking requests",
    ]
    assert show("start", [report(1)])
    assert not show("start", [middle])
    assert "start: performance 99, " in capsys.readouterr().out
