"""What differs between two packs is told part by part."""

import shutil
from dataclasses import fields, replace

import pytest

from tests.builders import (
    ELECTRIC_OVEN,
    FAULTS,
    OBSERVATIONS,
    PAIRS,
    RED_FLAGS,
    TASKS,
    by_id,
    electric_oven,
    make_fault,
    make_pack,
)
from triage.authoring.pack_changes import ENTRIES, WHOLES, changes, text_changes
from triage.engine.pack import Complaint, Effect, Limits, Pack
from triage.knowledge.pack_builder import build_pack


def told(**parts):
    return [str(change) for change in changes(make_pack(), make_pack(**parts))]


def test_a_pack_does_not_differ_from_itself_nor_from_a_copy_of_its_files(tmp_path):
    assert changes(make_pack(), make_pack()) == ()
    copy = shutil.copytree(ELECTRIC_OVEN, tmp_path / "electric_oven")
    assert changes(electric_oven(), build_pack(copy)) == ()
    assert text_changes(ELECTRIC_OVEN, copy) == ()


def test_every_part_of_a_pack_is_compared():
    assert {field.name for field in fields(Pack)} == {"id", "version", *ENTRIES, *WHOLES}


@pytest.mark.parametrize(
    ("parts", "said"),
    [
        ({"faults": FAULTS | by_id(make_fault("hinge-worn"))}, "fault hinge-worn added"),
        (
            {"faults": FAULTS | by_id(replace(FAULTS["element-open"], calls_per_1000=12.0))},
            "fault element-open changed: calls_per_1000 50 → 12",
        ),
        (
            {"faults": FAULTS | by_id(replace(FAULTS["lamp-failed"], effects=(Effect("lamp", (0.5, 0.5)),)))},
            "effect lamp-failed on lamp changed: lit 0.02 → 0.5; dark 0.98 → 0.5",
        ),
        (
            {"faults": FAULTS | by_id(replace(FAULTS["lamp-failed"], effects=()))},
            "effect lamp-failed on lamp removed: lit 0.02 → nothing; dark 0.98 → nothing",
        ),
        (
            {"observations": OBSERVATIONS | by_id(replace(OBSERVATIONS["heats"], effort_seconds=99.0))},
            "observation heats changed: effort_seconds 10 → 99",
        ),
        (
            {"observations": {name: o for name, o in OBSERVATIONS.items() if name != "pane"}},
            "observation pane removed",
        ),
        (
            {"red_flags": RED_FLAGS | by_id(replace(RED_FLAGS["loose-pane"], switches="never"))},
            "red flag loose-pane changed: switches any → never",
        ),
        (
            {"tasks": TASKS | by_id(replace(TASKS["set-clock"], helps=frozenset({"other"})))},
            "task set-clock changed: helps normal-preheat programmer-not-set → other",
        ),
        (
            {"fault_pairs": (replace(PAIRS[0], rate_per_1000=3.0),)},
            (
                "pairs of faults changed: element-open + lamp-failed rate_per_1000 1.5 → 3; "
                "element-arcing + board-dead removed"
            ),
        ),
        ({"complaints": (Complaint("is-dead", {}, "front"),)}, "start page changed: without "),
        ({"limits": Limits(max_questions=3)}, "limits changed: 6 0.85 0.04 0.01 0.1 → 3 0.85 0.04 0.01 0.1"),
        ({"out_of_scope": {}}, "ways out changed: fuel | gas: gas-oven → nothing"),
    ],
)
def test_each_difference_is_told_with_what_was_and_what_is(parts, said):
    (only,) = told(**parts)
    assert only.startswith(said)


def test_a_difference_in_the_last_digit_is_one():
    nearly = replace(FAULTS["element-open"], calls_per_1000=50.000000001)
    assert len(told(faults=FAULTS | by_id(nearly))) == 1


def test_an_effect_on_some_ovens_only_is_told_with_them():
    special, *rest = FAULTS["element-open"].effects[1:]
    fault = replace(FAULTS["element-open"], effects=(FAULTS["element-open"].effects[0], *rest))
    (only,) = told(faults=FAULTS | by_id(fault))
    assert special.when == frozenset({"electronic"})
    assert "full on electronic 0.1 → nothing" in only


def test_texts_are_compared_entry_by_entry(tmp_path):
    copy = shutil.copytree(ELECTRIC_OVEN, tmp_path / "electric_oven")
    file = copy / "text" / "en" / "faults.yaml"
    text = file.read_text("utf-8")
    file.write_text(text.replace("grill-element-open:", "grill-element-gone:", 1), "utf-8")
    shutil.copytree(copy / "text" / "en", copy / "text" / "de")
    found = text_changes(ELECTRIC_OVEN, copy)
    english = [(change.name, change.how) for change in found if change.name.startswith("en/")]
    assert english == [("en/faults: grill-element-open", "removed"), ("en/faults: grill-element-gone", "added")]
    assert {change.how for change in found if change.name.startswith("de/")} == {"added"}
