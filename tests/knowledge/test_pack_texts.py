"""Every id has its words and every word its id; a page for a red flag or a task can never be bare."""

import shutil

import pytest

from triage.knowledge.library import ELECTRIC_OVEN, library
from triage.knowledge.pack_texts import build_texts

ENGLISH = ELECTRIC_OVEN / "text" / "en"


@pytest.fixture
def texts(tmp_path):
    """A copy of the English texts to put mistakes into."""
    return shutil.copytree(ENGLISH, tmp_path / "oven" / "text" / "en")


def change(folder, name, old, new):
    file = folder / f"{name}.yaml"
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), "utf-8")


def problems_of(folder):
    problems = []
    build_texts(folder, library().pack, problems)
    return problems


def told(folder):
    return {(p.file, p.where, p.what) for p in problems_of(folder)}


def test_the_shipped_texts_have_no_problem():
    assert problems_of(ENGLISH) == []


def test_all_mistakes_are_told_in_one_go(texts):
    change(texts, "observations", "    no-smoke: ", "    no-smog: ")
    change(texts, "faults", "fan-element-open:", "fan-element-shut:")
    change(texts, "families", "fan-element:", "fan-elements:")
    change(texts, "isolation", "\nunknown:", "\nunheard-of:")
    change(texts, "levels", "  no-heat: ", "  no-heats: ")
    change(texts, "start", "  - label: Something else\n", "  - label: Something other\n    extra: 1\n")
    found = told(texts)
    assert ("oven/text/en/observations.yaml", "smoke-source", "has no words for no-smoke.") in found
    assert ("oven/text/en/observations.yaml", "smoke-source", "has no option no-smog.") in found
    assert ("oven/text/en/faults.yaml", "fan-element-open", "has no text here.") in found
    assert ("oven/text/en/faults.yaml", "fan-element-shut", "has no 'fan-element-shut'.") in found
    assert ("oven/text/en/families.yaml", "fan-element", "has no text here.") in found
    assert ("oven/text/en/isolation.yaml", "unknown", "has no text here.") in found
    assert ("oven/text/en/levels.yaml", "main-trouble", "`no-heat` is missing.") in found
    assert ("oven/text/en/start.yaml", "start, entries 42, extra", "is not a field here.") in found


def test_a_red_flag_without_a_first_action_is_refused(texts):
    file = texts / "red_flags.yaml"
    head, _, rest = file.read_text("utf-8").partition("gas-smell:")
    before, _, after = rest.partition("  first:\n")
    kept = after[after.index("  never:") :]
    file.write_text(f"{head}gas-smell:{before}  first: []\n{kept}", "utf-8")
    assert told(texts) == {("oven/text/en/red_flags.yaml", "gas-smell", "has no first action.")}


def test_a_task_without_cautions_is_refused(texts):
    file = texts / "tasks.yaml"
    head, _, rest = file.read_text("utf-8").partition("set-clock:")
    before, _, after = rest.partition("  cautions:\n")
    kept = after[after.index("  tools:") :]
    file.write_text(f"{head}set-clock:{before}  cautions: []\n{kept}", "utf-8")
    assert told(texts) == {("oven/text/en/tasks.yaml", "set-clock", "has no cautions.")}


def test_a_sign_that_is_not_drawn_is_refused(texts):
    change(texts, "tasks", "sign: electricity", "sign: lightning")
    ((file, where, what),) = told(texts)
    assert (file, where) == ("oven/text/en/tasks.yaml", "set-clock")
    assert what == "has a caution with signal 'WARNING' and sign 'lightning'."


def test_a_way_out_that_the_pack_needs_and_a_start_line_cannot_be_left_out(texts):
    change(texts, "start", "  gas-oven:", "  gas-cooker:")
    change(texts, "start", "  - label: Something else\n", "  #")
    found = told(texts)
    assert ("oven/text/en/start.yaml", "exits", "has no way out named gas-oven.") in found
    assert ("oven/text/en/start.yaml", "entries", "has 41 entries; complaints.yaml has 42.") in found
