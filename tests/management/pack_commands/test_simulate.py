"""`manage.py pack simulate`: both worlds, the same for the same seed, and numbers that make no sense refused."""

import json
from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from triage.authoring.simulation import World, simulate
from triage.knowledge.library import library
from triage.management.pack_commands.simulate import kits_of


def said(*words):
    out = StringIO()
    call_command("pack", "simulate", *words, stdout=out, stderr=StringIO())
    return out.getvalue()


@pytest.fixture(scope="module")
def text():
    return said("--samples", "30", "--seed", "5")


def test_both_worlds_are_shown_with_figures_confusions_and_what_matters(text):
    heading, own, taken, numbers, off, taken_off = text.strip().split("\n\n")
    assert heading == "30 checks in gb-eng, seed 5; in brackets the 95 % interval (Wilson)"
    assert own.startswith("As the pack says: people answer as the pack says people answer\n  Right cause first ")
    assert " on average\n  All parts on the first visit " in own
    assert taken.startswith("  What is taken for what\n")
    assert numbers.startswith("  Which numbers deserve evidence: what the log score loses, in thousandths,\n")
    assert len(numbers.splitlines()) == 2 + 15
    assert off.startswith(
        'Where it is off: numbers by up to a factor of 2, 5 % of answers wrong, 10 % more "can\'t tell"\n'
    )
    assert taken_off.startswith("  What is taken for what\n")


def test_the_json_holds_what_was_asked_and_what_was_found():
    told = json.loads(said("--samples", "20", "--seed", "5", "--region", "us", "--json"))
    found = simulate(library().pack, library().regions["us"].region, kits_of(library()), World(weigh=True), 20, 5)
    assert told["asked"] == {
        "samples": 20,
        "seed": 5,
        "region": "us",
        "off_by": 2.0,
        "error_rate": 0.05,
        "unknown_rate": 0.1,
    }
    assert told["as the pack says"]["figures"] == json.loads(json.dumps(found.figures.as_json()))
    assert len(told["as the pack says"]["costs"]) == len(found.costs) > 100
    assert told["where it is off"]["costs"] == []


def test_a_world_that_is_off_by_nothing_is_not_played_twice():
    told = json.loads(said("--samples", "5", "--off-by", "1", "--error-rate", "0", "--unknown-rate", "0", "--json"))
    assert set(told) == {"asked", "as the pack says"}


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("--samples", "0"), r"^--samples must be from 1 to 100000, not 0\.$"),
        (("--off-by", "0.5"), r"^--off-by must be from 1 to 100, not 0\.5\.$"),
        (("--off-by", "nan"), r"^--off-by must be from 1 to 100, not nan\.$"),
        (("--error-rate", "1.5"), r"^--error-rate must be from 0 to 1, not 1\.5\.$"),
        (("--unknown-rate", "-1"), r"^--unknown-rate must be from 0 to 1, not -1\.0\.$"),
        (("--region", "moon"), r"^There is no region moon\. Known: "),
    ],
)
def test_a_number_that_makes_no_sense_is_refused_before_anything_is_written(words, message):
    out = StringIO()
    with pytest.raises(CommandError, match=message) as refused:
        call_command("pack", "simulate", *words, stdout=out)
    assert refused.value.returncode == 2
    assert out.getvalue() == ""
