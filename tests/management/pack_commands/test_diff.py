"""`manage.py pack diff`: what changed, whose check ends differently, and examples to open."""

import json
import shutil

import pytest

from tests.builders import ELECTRIC_OVEN
from tests.management.pack_commands.asking import refused, said
from triage.authoring.answers_text import read_text
from triage.engine.check import Question, run_check
from triage.knowledge.library import library
from triage.knowledge.pack_builder import build_pack


@pytest.fixture
def copy(tmp_path):
    return shutil.copytree(ELECTRIC_OVEN, tmp_path / "electric_oven")


def change(file, old, new):
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), "utf-8")


def test_a_copy_does_not_differ(copy):
    text = said("diff", str(copy), "--samples", "20")
    assert "Nothing a check could notice. No text changed either." in text


def test_texts_alone_change_no_ending(copy):
    change(copy / "text/en/faults.yaml", "Burnt-out", "Worn-out")
    text = said("diff", str(ELECTRIC_OVEN), str(copy), "--samples", "20")
    assert "text en/faults: " in text
    assert "Nothing a check could notice. Texts change no ending." in text


def test_a_change_is_told_with_whom_it_concerns_and_examples_that_open(copy, tmp_path):
    before = shutil.copytree(copy, tmp_path / "before" / "electric_oven")
    change(copy / "pack.yaml", "questions: 12", "questions: 3")
    told = json.loads(said("diff", str(before), str(copy), "--samples", "60", "--json", "--region", "us"))
    assert [each["what"] for each in told["changes"]] == ["limits"]
    old, new = build_pack(before), build_pack(copy)
    assert (told["old"], told["new"]) == (old.version, new.version)
    assert 0 < told["different"] <= 60
    (group,) = told["groups"]
    assert (group["because"], group["count"]) == ("limits", told["traced"])
    for side, pack in (("old", old), ("new", new)):
        for example in group["examples"]:
            trail = read_text(example[side]["query"])
            step = run_check(pack, library().regions["us"].region, trail.pairs).step
            assert trail.region == "us"
            assert not isinstance(step, Question)
            assert step.verdict.family in example[side]["ending"]


def test_for_people_it_counts_with_an_interval(copy):
    change(copy / "pack.yaml", "questions: 12", "questions: 3")
    text = said("diff", str(copy), "--samples", "60")
    assert "limits changed: " in text
    assert "Checks that end differently (seed 1): " in text
    assert " of 60, " in text
    assert " by limits\n" in text
    assert "\n    ?region=gb-eng&complaint=" in text


def test_the_pack_as_written_is_known_by_its_word():
    assert "Nothing a check could notice." in said("diff", "written", str(ELECTRIC_OVEN), "--samples", "20")


def test_bad_input_gets_one_sentence(tmp_path):
    assert "is neither a folder nor a git revision" in refused("diff", "no-such-revision")
    assert "holds no pack that this program loads. " in refused("diff", str(tmp_path))
    assert refused("diff", str(ELECTRIC_OVEN), "--samples", "0") == "--samples must be from 1 to 1000000, not 0."
    assert refused("diff", str(ELECTRIC_OVEN), "--region", "moon").startswith("There is no region moon.")
