"""`manage.py pack fit`: a proposal, and nothing changed."""

import json
from xml.etree import ElementTree

import pytest
import yaml
from django.core.management import CommandError

from tests.learning.visits import written_library
from tests.management.pack_commands.outcome_files import outcome_file, said
from triage.knowledge.library import ELECTRIC_OVEN
from triage.knowledge.overlay import lowered_dangers
from triage.knowledge.pack_builder import content_hash, overlaid, rules_hash


def test_it_prints_a_proposal_and_writes_nothing(tmp_path):
    before = content_hash(ELECTRIC_OVEN), sorted(ELECTRIC_OVEN.rglob("*"))
    text = said("fit", outcome_file(tmp_path), "--overlays", tmp_path / "overlays")
    assert text.startswith("30 outcomes of all firms, from 2026-03-01")
    assert "On outcomes held out" in text
    assert (content_hash(ELECTRIC_OVEN), sorted(ELECTRIC_OVEN.rglob("*"))) == before
    assert [path.name for path in tmp_path.iterdir()] == ["outcomes.yaml"]


def test_as_json_with_the_proposal_and_the_plot_written_where_asked(tmp_path):
    proposal, plot = tmp_path / "proposal.yaml", tmp_path / "plot.svg"
    told = json.loads(said("fit", outcome_file(tmp_path), "--json", "--proposal", proposal, "--plot", plot))
    assert told["outcomes"] == 30
    fields = yaml.safe_load(proposal.read_text("utf-8"))
    assert fields["rules"] == rules_hash(ELECTRIC_OVEN)
    assert "accepted_by" not in fields
    assert ElementTree.parse(plot).getroot().tag.endswith("svg")


def test_a_firm_may_be_named_and_an_unknown_one_is_told_with_those_there_are(tmp_path):
    file = outcome_file(tmp_path)
    assert said("fit", file, "--firm", "north").startswith("30 outcomes of north")
    with pytest.raises(CommandError, match=r"No outcome is of firm south\. Firms: north\.") as refused:
        said("fit", file, "--firm", "south")
    assert refused.value.returncode == 2


def test_accepted_at_once_the_overlay_is_laid_over_the_pack_and_no_danger_falls(tmp_path):
    said("fit", outcome_file(tmp_path), "--accept", "--accepted-by", "Ada Example", "--overlays", tmp_path / "overlays")
    (path,) = (tmp_path / "overlays").iterdir()
    known = written_library()
    laid = overlaid(known.pack, ELECTRIC_OVEN, path)
    assert yaml.safe_load(path.read_text("utf-8"))["accepted_by"] == "Ada Example"
    assert laid.faults["fan-element-open"].calls_per_1000 != known.pack.faults["fan-element-open"].calls_per_1000
    assert not list(lowered_dangers(known.pack, laid, (place.region for place in known.regions.values())))


def test_accepting_without_a_name_is_refused_before_anything_is_read(tmp_path):
    with pytest.raises(CommandError, match="Say who accepts: --accepted-by NAME") as refused:
        said("fit", tmp_path / "nothing.yaml", "--accept")
    assert refused.value.returncode == 2


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "does not hold named entries"),
        ("outcomes: []", "holds no outcome"),
        ("outcomes:\n  - {reference: a, region: moon}", "has no 'moon'"),
    ],
)
def test_bad_outcomes_end_with_two_and_nothing_written(tmp_path, text, told):
    file = tmp_path / "outcomes.yaml"
    file.write_text(text, "utf-8")
    with pytest.raises(CommandError, match=told) as refused:
        said(
            "fit",
            file,
            "--proposal",
            tmp_path / "proposal.yaml",
            "--accept",
            "--accepted-by",
            "Ada",
            "--overlays",
            tmp_path / "o",
        )
    assert refused.value.returncode == 2
    assert list(tmp_path.iterdir()) == [file]


def test_a_proposal_that_cannot_be_written_is_told(tmp_path):
    with pytest.raises(CommandError, match=r"proposal\.yaml cannot be written: .*Give another path\.") as refused:
        said("fit", outcome_file(tmp_path), "--proposal", tmp_path / "no-folder" / "proposal.yaml")
    assert refused.value.returncode == 2
