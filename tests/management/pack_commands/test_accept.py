"""`manage.py pack accept`: a person makes a proposal an overlay."""

import json

import pytest
import yaml
from django.core.management import CommandError

from tests.management.pack_commands.outcome_files import outcome_file, said


@pytest.fixture(scope="module")
def proposed(tmp_path_factory):
    """A proposal of `pack fit`, as text."""
    folder = tmp_path_factory.mktemp("proposed")
    path = folder / "proposal.yaml"
    said("fit", outcome_file(folder), "--proposal", path)
    return path.read_text("utf-8")


@pytest.fixture
def proposal(proposed, tmp_path):
    path = tmp_path / "proposal.yaml"
    path.write_text(proposed, "utf-8")
    return path


def test_it_becomes_an_overlay_with_who_and_when(proposal, tmp_path):
    folder = tmp_path / "overlays"
    text = said("accept", proposal, "--accepted-by", "Ada Example", "--overlays", folder)
    (path,) = folder.iterdir()
    assert text.startswith(f"Accepted: {path}\n")
    fields = yaml.safe_load(path.read_text("utf-8"))
    assert fields.pop("accepted_by") == "Ada Example"
    assert path.name.startswith(fields.pop("accepted_on"))
    assert fields == yaml.safe_load(proposal.read_text("utf-8"))


def test_as_json(proposal, tmp_path):
    told = json.loads(said("accept", proposal, "--accepted-by", "Ada", "--overlays", tmp_path / "overlays", "--json"))
    assert told["accepted_by"] == "Ada"
    assert told["overlay"].endswith("-01.yaml")


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("outcomes: 30", "outcomes: many", "must be a number"),
        ("pack: electric-oven", "pack: gas-oven", "is 'gas-oven', and that of this pack is 'electric-oven'"),
        ("fan-element-open: ", "gremlins: 1\n  fan-element-open: ", "has no 'gremlins'"),
        ("  neutral-fault: ", "  neutral-fault: 0.01 # ", "neutral-fault: is less likely than in the pack as written"),
    ],
)
def test_what_is_wrong_ends_with_two_and_nothing_written(proposal, tmp_path, old, new, told):
    text = proposal.read_text("utf-8")
    assert old in text
    proposal.write_text(text.replace(old, new, 1), "utf-8")
    with pytest.raises(CommandError, match=told) as refused:
        said("accept", proposal, "--accepted-by", "Ada", "--overlays", tmp_path / "overlays")
    assert refused.value.returncode == 2
    assert not (tmp_path / "overlays").exists()
