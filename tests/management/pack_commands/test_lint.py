"""`manage.py pack lint`: exit code 1 for mistakes only, and every finding with its place."""

import json
import shutil
from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from tests.builders import ELECTRIC_OVEN
from tests.management.pack_commands.asking import refused, said


@pytest.fixture
def copy(tmp_path):
    return shutil.copytree(ELECTRIC_OVEN, tmp_path / "electric_oven")


def change(file, old, new):
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), "utf-8")


def mistaken(*words):
    """What is written, and the last word, for a pack with mistakes."""
    out = StringIO()
    with pytest.raises(CommandError) as caught:
        call_command("pack", "lint", *words, stdout=out, stderr=StringIO())
    assert caught.value.returncode == 1
    return out.getvalue(), str(caught.value)


def test_the_pack_people_use_has_remarks_only():
    text = said("lint", "--samples", "0")
    *remarks, last = text.splitlines()
    assert all(line.startswith("remark: electric_oven/") for line in remarks)
    assert last == f"Mistakes: 0. Remarks: {len(remarks)}."


def test_as_json_each_finding_has_its_place_and_remedy():
    for finding in json.loads(said("lint", "--samples", "0", "--json")):
        assert list(finding) == ["level", "kind", "file", "line", "where", "what", "remedy"]
        assert finding["level"] == "remark"
        assert finding["remedy"].endswith(".")


def test_a_mistake_gives_exit_code_one_and_stands_first(copy):
    change(
        copy / "text/en/observations.yaml", "How hot does the oven get?", "Incomprehensibly hot ovens intermittently?"
    )
    text, last = mistaken(str(copy), "--samples", "0")
    assert text.startswith("mistake: electric_oven/text/en/observations.yaml:")
    assert "Mistakes: 1. " in text
    assert last == "The pack in electric_oven has mistakes: 1."


def test_what_the_loader_refuses_is_listed_whole(copy):
    change(copy / "faults.yaml", "  calls_per_1000: 136\n", "  calls_per_1000: many\n")
    change(copy / "observations.yaml", "  effort_seconds: 10\n", "  effort_seconds: -1\n")
    text, _ = mistaken(str(copy))
    assert "faults.yaml:" in text
    assert "observations.yaml:" in text
    assert "The pack does not load; what else is weak shows once it does." in text
    plain, _ = mistaken(str(copy), "--json")
    assert {finding["kind"] for finding in json.loads(plain)} == {"refused"}


def test_an_empty_folder_lacks_every_file(tmp_path):
    text, last = mistaken(str(tmp_path))
    assert "pack.yaml:1: file: is missing." in text
    assert last.endswith("has mistakes: 10.")


def test_a_pack_without_texts_is_told_so(copy):
    shutil.rmtree(copy / "text")
    text, _ = mistaken(str(copy))
    assert "electric_oven/text:1: folder: has no en." in text


def test_a_folder_that_is_not_there_and_a_senseless_number_are_refused(tmp_path):
    assert refused("lint", str(tmp_path / "gone")).startswith("There is no folder ")
    assert refused("lint", "--samples", "-1") == "--samples must be from 0 to 1000000, not -1."


def test_with_made_up_checks_the_questions_that_never_came_up_are_told():
    assert "was not asked in any of 20 simulated checks." in said("lint", "--samples", "20")
