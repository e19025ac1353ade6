"""`manage.py pack explain`: one check, answer by answer."""

import json

import pytest

from tests.management.pack_commands.asking import refused, said
from triage.authoring.explanation import explain
from triage.engine.check import run_check
from triage.knowledge.library import library

TRAIL = "complaint=no-heat&danger=none&heat-main=no-heat"


def test_every_answer_has_its_weight_its_causes_and_what_comes_next():
    text = said("explain", TRAIL, "--region", "us")
    assert text.startswith(f"electric-oven {library().pack.version}, region us\n")
    for piece in TRAIL.split("&"):
        assert f"\n{piece}\n  weighs    " in text
    assert text.count("  causes    ") == 4
    assert " bits per 1000 s" in text
    assert text.rstrip().splitlines()[-1].startswith("In the end the check goes on with ")


def test_as_json_it_is_the_explanation_itself():
    told = json.loads(said("explain", TRAIL, "--json", "--region", "us"))
    pairs = [piece.split("=") for piece in TRAIL.split("&")]
    ours = explain(run_check(library().pack, library().regions["us"].region, pairs)).as_json()
    assert told == json.loads(json.dumps(ours))


def test_the_region_of_the_trail_counts_unless_another_is_named():
    assert json.loads(said("explain", f"region=us&{TRAIL}", "--json"))["region"] == "us"
    assert json.loads(said("explain", f"region=us&{TRAIL}", "--json", "--region", "fr"))["region"] == "fr"
    assert json.loads(said("explain", TRAIL, "--json"))["region"] == "gb-eng"


def test_what_was_not_used_is_said():
    assert "Not used (contradiction): heat-main=" in said("explain", f"{TRAIL}&heat-main=too-hot")


@pytest.mark.parametrize(
    ("trail", "sentence"),
    [
        ("", "The trail is empty."),
        ("wheel=round", "The pack has no wheel."),
        ("heat-main=blue", "The pack has no heat-main=blue."),
        ("region=moon&heat-main=no-heat", "There is no region moon."),
        ('{"a"', "The trail begins like JSON"),
    ],
)
def test_a_bad_trail_gets_one_sentence(trail, sentence):
    assert refused("explain", trail).startswith(sentence)
