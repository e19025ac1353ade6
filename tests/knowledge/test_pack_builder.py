"""A folder of YAML becomes a pack; one that is broken is refused with every mistake, its place and its remedy."""

import shutil

import pytest
from hypothesis import given, settings, strategies

from tests.knowledge.small_packs import (
    BROKEN_PACKS,
    SMALL_PACK,
    broken_pack,
    copy_of_small_pack,
    edit,
    told_about,
)
from triage.engine.check import Question, Result, run_check
from triage.engine.pack import Limits, Region
from triage.knowledge.pack_builder import FILES, build_pack, content_hash
from triage.knowledge.problems import PackProblems

MISTAKES = sorted(folder.name for folder in BROKEN_PACKS.iterdir())
REPLACEMENTS = ["", "[]", "{}", "3", "true", "text", "[text]", "{text: text}", "~", "2026-01-01", "!own text", "- text"]
LINES = [
    (name, number)
    for name in FILES
    for number, _ in enumerate((SMALL_PACK / f"{name}.yaml").read_text("utf-8").splitlines())
]


def test_the_small_pack_is_built_whole():
    pack = build_pack(SMALL_PACK)
    assert pack.id == "small-pack"
    assert list(pack.faults) == ["element-open", "board-dead", "lamp-failed", "other"]
    assert pack.out_of_scope == {("fuel", "gas"): "gas-oven"}
    assert pack.retired == {"heats-well": "heats"}
    assert pack.look_alikes == (frozenset({"element-open", "board-dead"}),)
    assert pack.limits == Limits(
        max_questions=6, stop_probability=0.85, min_bits=0.04, plausible_probability=0.01, relevant_probability=0.1
    )
    assert [(c.option, c.answers) for c in pack.complaints] == [
        ("stays-cold", {"heats": "no-heat"}),
        ("lamp-out", {}),
    ]


def test_a_built_pack_can_be_reasoned_with():
    pack, trail = build_pack(SMALL_PACK), [("danger", "none")]
    while isinstance(step := run_check(pack, Region("anywhere"), trail).step, Question):
        trail.append((step.observation, pack.observations[step.observation].options[-1]))
    assert isinstance(step, Result) or step.flags


@pytest.mark.parametrize("mistake", MISTAKES)
def test_a_mistake_is_told_with_its_place_what_is_wrong_and_what_to_do(mistake, tmp_path):
    expected = (BROKEN_PACKS / mistake / "expected.txt").read_text("utf-8").splitlines()
    told = told_about(broken_pack(mistake, tmp_path))
    assert [line for line in expected if line not in told] == [], told


def test_there_is_a_broken_pack_for_every_mistake_that_comes_to_mind():
    assert len(MISTAKES) >= 25
    assert all((BROKEN_PACKS / mistake / "expected.txt").is_file() for mistake in MISTAKES)


def test_mistakes_in_three_files_are_all_told_at_once(tmp_path):
    told = told_about(broken_pack("several-mistakes-in-several-files", tmp_path))
    assert {line.split(":")[0] for line in told} >= {
        "small_pack/faults.yaml",
        "small_pack/observations.yaml",
        "small_pack/tasks.yaml",
    }
    assert told == sorted(told, key=lambda line: (line.split(":")[0], int(line.split(":")[1])))


@pytest.mark.parametrize("name", FILES)
def test_a_missing_file_is_named(tmp_path, name):
    pack = copy_of_small_pack(tmp_path)
    (pack / f"{name}.yaml").unlink()
    assert told_about(pack) == [
        f"small_pack/{name}.yaml:1: file: is missing. Add it; the pack README names every file."
    ]


def test_every_missing_file_is_named_at_once(tmp_path):
    (tmp_path / "empty").mkdir()
    assert len(told_about(tmp_path / "empty")) == len(FILES)


def test_a_file_that_is_too_large_is_refused_unread(tmp_path):
    pack = copy_of_small_pack(tmp_path)
    (pack / "tasks.yaml").write_text("# " + "x" * 1_000_000, "utf-8")
    assert told_about(pack) == ["small_pack/tasks.yaml:1: file: is larger than 1000000 bytes. Split it."]


@settings(deadline=None, max_examples=150)
@given(place=strategies.sampled_from(LINES), value=strategies.sampled_from(REPLACEMENTS))
def test_no_value_in_any_line_does_more_than_be_refused(tmp_path_factory, place, value):
    """Whatever an author writes for a value, the answer is a pack or a list of problems, never a crash."""
    name, number = place
    folder = tmp_path_factory.mktemp("edited")
    pack = copy_of_small_pack(folder)
    lines = (pack / f"{name}.yaml").read_text("utf-8").splitlines()
    lines[number] = lines[number].partition(": ")[0].rstrip(":") + f": {value}"
    (pack / f"{name}.yaml").write_text("\n".join(lines), "utf-8")
    builds_or_tells(pack)
    shutil.rmtree(folder)


@settings(deadline=None, max_examples=60)
@given(place=strategies.sampled_from(LINES))
def test_no_missing_line_does_more_than_be_refused(tmp_path_factory, place):
    name, number = place
    folder = tmp_path_factory.mktemp("edited")
    pack = copy_of_small_pack(folder)
    lines = (pack / f"{name}.yaml").read_text("utf-8").splitlines()
    (pack / f"{name}.yaml").write_text("\n".join(lines[:number] + lines[number + 1 :]), "utf-8")
    builds_or_tells(pack)
    shutil.rmtree(folder)


def builds_or_tells(pack):
    try:
        build_pack(pack)
    except PackProblems as refusal:
        for problem in refusal.problems:
            assert problem.file.startswith("small_pack/")
            assert problem.line >= 1
            assert problem.what.endswith(".")
            assert problem.remedy.endswith(".")


def test_the_version_is_the_authors_and_the_hash_of_every_file(tmp_path):
    pack = copy_of_small_pack(tmp_path)
    assert build_pack(pack).version == f"test-{content_hash(pack)}"
    assert content_hash(pack) == content_hash(SMALL_PACK)


@pytest.mark.parametrize("name", ["faults.yaml", "text/en/faults.yaml"])
def test_any_change_in_any_file_changes_the_version(tmp_path, name):
    pack = copy_of_small_pack(tmp_path)
    before = content_hash(pack)
    file = pack / name
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text("# A remark.\n" + (file.read_text("utf-8") if file.exists() else ""), "utf-8")
    assert content_hash(pack) != before


def test_a_file_that_moves_changes_the_version(tmp_path):
    pack = copy_of_small_pack(tmp_path)
    (pack / "one.yaml").write_text("a: b\n", "utf-8")
    before = content_hash(pack)
    (pack / "one.yaml").rename(pack / "two.yaml")
    assert content_hash(pack) != before


def test_a_task_that_cures_something_asks_whether_it_did(tmp_path):
    pack = build_pack(SMALL_PACK)
    question = pack.observations["did-change-lamp"]
    assert question.task == "change-lamp"
    assert question.reports == "cured-by-change-lamp"
    assert "cured-by-change-lamp" in {effect.condition for effect in pack.faults["lamp-failed"].effects}


def test_a_limit_outside_its_range_is_told_with_the_range(tmp_path):
    pack = copy_of_small_pack(tmp_path)
    edit(pack, "pack", "stop_probability: 0.85", "stop_probability: 85")
    assert told_about(pack) == [
        (
            "small_pack/pack.yaml:3: pack, limits, stop_probability: must be a number from 0.5 to 1, not 85. "
            "Give one in that range."
        )
    ]
