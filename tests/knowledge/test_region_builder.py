"""A region brings its words, numbers and rules; no number is passed on that may not be shown."""

import shutil

import pytest

from triage.knowledge.library import REGIONS, library
from triage.knowledge.region_builder import build_regions


@pytest.fixture
def folder(tmp_path):
    """England and the sentences, to put mistakes into."""
    for name in ("gb-eng", "messages.en"):
        shutil.copy(REGIONS / f"{name}.yaml", tmp_path)
    return tmp_path


def build(folder):
    problems = []
    return build_regions(folder, "en", library().pack, problems), [
        f"{p.line and p.where}: {p.what} {p.remedy}" for p in problems
    ]


def change(folder, old, new):
    file = folder / "gb-eng.yaml"
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), "utf-8")


def test_every_shipped_region_has_an_emergency_number_and_all_its_words():
    for profile in library().regions.values():
        assert profile.emergency.isdigit()
        assert all(profile.terms.values())
        assert "{" not in profile.gas_text + profile.isolation_note + profile.local_line


def test_no_region_adds_a_task_and_the_unknown_place_has_no_territory():
    regions = library().regions
    assert all(profile.region.removed_tasks <= set(library().pack.tasks) for profile in regions.values())
    assert regions["iec"].territory == ""
    assert regions["gb-sct"].territory == "GB"


def test_a_number_that_may_not_be_shown_is_not_there(folder):
    change(folder, '  number: "0800 111 999"\n  show: true', '  number: "0800 111 999"\n  show: false')
    regions, problems = build(folder)
    assert problems == []
    assert regions["gb-eng"].gas == ""
    assert "0800" not in repr(regions["gb-eng"])


def test_a_missing_emergency_number_is_refused(folder):
    change(folder, '  number: "999"\n', "")
    _, problems = build(folder)
    assert problems == ["gb-eng, emergency: `number` is missing. Give a text."]


def test_a_number_to_show_that_is_not_there_is_refused(folder):
    change(folder, '  number: "105"\n  show: false', '  number: ""\n  show: true')
    _, problems = build(folder)
    assert problems == ["gb-eng, network, show: is true but there is no number. Give the number or write show: false."]


def test_shares_rules_and_words_are_checked(folder):
    change(folder, "{single: 0.62, twin: 0.38}", "{single: 0.62, twin: 0.3}")
    change(folder, "hardwired: registered-person-advised", "hardwired: whoever")
    change(folder, "  board: fuse box\n", "")
    change(folder, "removed_tasks: []", "removed_tasks: [open-the-oven]")
    _, problems = build(folder)
    told = "\n".join(problems)
    assert "gb-eng, variant_shares, cavity: adds up to 0.92. Make the shares add up to 1." in told
    assert "gb-eng, who_may, hardwired: has no 'whoever'." in told
    assert "gb-eng, terms: `board` is missing. Give a text." in told
    assert "gb-eng, removed_tasks: has no 'open-the-oven'." in told


def test_a_region_file_that_is_no_yaml_is_named(folder):
    (folder / "gb-eng.yaml").write_text("name: [", "utf-8")
    regions, problems = build(folder)
    assert regions == {}
    assert problems[0].startswith("file: is not valid YAML")
