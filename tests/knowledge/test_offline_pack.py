"""The phone's copy of the pack: whole, the same text every time, and small."""

import json
from dataclasses import replace

import pytest

from tests.builders import ANYWHERE, electric_oven, make_pack
from triage.engine.frequency import FREQUENCIES
from triage.engine.pack import CANT_TELL, FaultPair, Region
from triage.knowledge.library import library
from triage.knowledge.offline_pack import LETTERS, build_offline_pack


@pytest.fixture
def told():
    regions = [profile.region for profile in library().regions.values()]
    return json.loads(build_offline_pack(library().pack, regions).text)


def keys_of(value):
    if isinstance(value, dict):
        return set(value) | {key for worth in value.values() for key in keys_of(worth)}
    return {key for worth in value for key in keys_of(worth)} if isinstance(value, list) else set()


def test_everything_the_engine_reasons_with_is_there_in_the_packs_order(told):
    pack = library().pack
    for part in ("variants", "conditions", "observations", "faults", "red_flags", "tasks"):
        assert list(told[part]) == list(getattr(pack, part))
    assert [tuple(pair[:3]) for pair in told["fault_pairs"]] == [
        (p.cause, p.effect, p.rate_per_1000) for p in pack.fault_pairs
    ]
    assert list(told["regions"]) == list(library().regions)
    assert [tuple(way) for way in told["out_of_scope"]] == [
        (*pair, reason) for pair, reason in pack.out_of_scope.items()
    ]
    assert told["version"] == pack.version


def test_every_row_of_the_real_pack_is_written_in_words(told):
    rows = [effect[1] for fault in told["faults"].values() for effect in fault["effects"]]
    assert all(isinstance(row, str) for row in rows)
    tables = [o["answer_probabilities"] for o in told["observations"].values() if "answer_probabilities" in o]
    assert all(isinstance(table[0], float) for table in tables)


def test_no_key_is_a_number_which_javascript_would_put_first(told):
    assert [key for key in keys_of(told) if key.isdigit()] == []


def test_a_default_is_left_out_and_anything_else_told():
    pack = make_pack()
    (name, question), *_ = pack.observations.items()
    urgent = replace(
        pack, observations={name: replace(question, urgent=True)}, fault_pairs=(FaultPair("a", "b", 1.5, True),)
    )
    assert "urgent" not in json.loads(build_offline_pack(pack, []).text)["observations"][name]
    told = json.loads(build_offline_pack(urgent, [Region("there", removed_tasks=frozenset({"z", "a"}))]).text)
    assert told["observations"][name]["urgent"] is True
    assert told["fault_pairs"] == [["a", "b", 1.5, 1]]
    assert told["regions"] == {"there": {"removed_tasks": ["a", "z"]}}


def test_the_version_changes_with_any_byte_and_with_nothing_else():
    pack = make_pack()
    one = build_offline_pack(pack, [ANYWHERE])
    assert build_offline_pack(make_pack(), [ANYWHERE]) == one
    assert build_offline_pack(pack, [replace(ANYWHERE, removed_tasks=frozenset({"x"}))]).version != one.version
    assert CANT_TELL not in one.text


def test_every_word_has_a_letter_of_its_own():
    assert list(LETTERS.items()) == list(zip(FREQUENCIES, "abcde-", strict=True))
    assert list(FREQUENCIES) == ["almost-always", "usually", "often", "sometimes", "rarely", "never"]


def test_a_row_that_outcomes_moved_is_written_in_full():
    """Its words stay with the shape and say something else."""
    pack = electric_oven()
    fault, asked = pack.faults["fan-element-open"], pack.observations["heat-main"]
    levels = tuple(reversed(fault.effects[0].levels))
    moved = replace(fault, effects=(replace(fault.effects[0], levels=levels), *fault.effects[1:]))
    rows = tuple(reversed(asked.answer_probabilities))
    learnt = replace(
        pack,
        faults={**pack.faults, fault.id: moved},
        observations={**pack.observations, asked.id: replace(asked, answer_probabilities=rows)},
    )
    packed = json.loads(build_offline_pack(learnt, []).text)
    assert packed["faults"][fault.id]["effects"][0][1] == list(levels)
    assert packed["observations"][asked.id]["answer_probabilities"] == [list(row) for row in rows]
