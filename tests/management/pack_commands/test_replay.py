"""`manage.py pack replay FILE`: what an author is told of each case and of all, and one clear message when it fails."""

import json
from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from tests.published.replaying import HERE, play, seen_cases
from triage.authoring.figures import figures

SEEN = HERE / "seen_cases.yaml"


def said(*words):
    out, err = StringIO(), StringIO()
    call_command("pack", "replay", *map(str, words), stdout=out, stderr=err)
    return out.getvalue()


def test_the_figures_are_those_of_the_cases_played_one_by_one():
    told = json.loads(said(SEEN, "--json"))
    played = [play(case) for case in seen_cases()]
    assert [case["id"] for case in told["cases"]] == [case.id for case in seen_cases()]
    assert [case["asked"] for case in told["cases"]] == [list(finding.asked) for finding in played]
    assert [case["rank"] for case in told["cases"]] == [finding.rank for finding in played]
    assert told["figures"] == json.loads(json.dumps(figures(played).as_json()))


def test_the_text_for_people_has_a_paragraph_for_each_case_and_the_figures_last():
    *cases, summary = said(SEEN).split("\n\n")
    assert [case.splitlines()[0] for case in cases] == [case.id for case in seen_cases()]
    assert cases[0].splitlines()[1] == "  band      make-safe"
    assert summary.startswith("21 cases; in brackets the 95 % interval (Wilson)\n  Right cause first ")
    assert len(summary.strip().splitlines()) == 9


def test_an_unexpected_band_and_a_cause_the_pack_lacks_are_said(tmp_path):
    path = tmp_path / "jobs.yaml"
    path.write_text("- {id: odd, answers: {complaint: no-heat}, expect: {causes: [gas-oven], band: [normal]}}\n")
    text = said(path)
    assert "  band      qualified, expected normal\n" in text
    assert "  expected  gas-oven: not among the pack's causes\n" in text


def test_a_case_without_a_region_is_played_where_the_author_says(tmp_path):
    path = tmp_path / "jobs.yaml"
    path.write_text("- {id: one, answers: {}, expect: {causes: [lamp-failed], band: [qualified]}}\n")
    regions = [json.loads(said(path, "--json", *words))["cases"][0]["region"] for words in ((), ("--region", "us"))]
    assert regions == ["gb-eng", "us"]


@pytest.mark.parametrize(
    ("text", "words", "message"),
    [
        ("", (), r"^jobs\.yaml:1: file: holds no cases\. Start each case with `- id:`"),
        (
            "- {id: one}\n",
            (),
            r"`answers` is missing\. Give named values\.\njobs\.yaml:1: case one: `expect` is missing",
        ),
        ("- {id: one}\n", ("--region", "moon"), r"^There is no region moon\. Known: "),
    ],
)
def test_a_mistake_is_one_clear_message_and_nothing_is_written(tmp_path, text, words, message):
    path, out = tmp_path / "jobs.yaml", StringIO()
    path.write_text(text)
    with pytest.raises(CommandError, match=message) as refused:
        call_command("pack", "replay", str(path), *words, stdout=out)
    assert refused.value.returncode == 2
    assert out.getvalue() == ""
