"""No danger sign goes unread on a call, and no phrase stands for an answer that is not there."""

import shutil

import pytest

from triage.knowledge.library import ELECTRIC_OVEN, library
from triage.knowledge.pack_texts import build_texts


@pytest.fixture
def texts(tmp_path):
    return shutil.copytree(ELECTRIC_OVEN / "text" / "en", tmp_path / "oven" / "text" / "en")


def told(folder, old, new):
    file = folder / "calls.yaml"
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), "utf-8")
    problems = []
    build_texts(folder, library().pack, problems)
    return [(p.file, p.where, p.what) for p in problems]


def test_a_sign_that_no_round_reads_is_refused(texts):
    assert told(texts, "[gas-smell, shut-in,", "[shut-in,") == [
        ("oven/text/en/calls.yaml", "rounds", "names gas-smell 0 times; it must be 1.")
    ]


def test_a_sign_that_is_none_or_read_twice_is_refused(texts):
    found = told(texts, "[gas-smell, shut-in,", "[gas-smell, shock, frost, shut-in,")
    assert [what for _, _, what in found] == [
        "names frost 1 times; it must be 0.",
        "names shock 2 times; it must be 1.",
    ]


def test_a_round_too_long_for_one_breath_is_refused(texts):
    ((_, where, what),) = told(texts, "Safety first.", "Safety first. " + "Listen. " * 10)
    assert (where, what) == ("rounds", "takes 51 words; at most 50 can be said in one breath.")


def test_a_phrase_for_no_answer_is_refused(texts):
    found = told(texts, "    lamp-works:", "    lamp-sings:")
    assert found == [
        ("oven/text/en/calls.yaml", "lamp-state", "has phrases for lamp-sings, which is no answer to lamp-state.")
    ]
