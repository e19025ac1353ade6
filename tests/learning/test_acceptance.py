"""Nothing is written until a person accepts, and then one whole file with who and when."""

import pytest
import yaml

from tests.builders import ANYWHERE
from tests.knowledge.small_packs import SMALL_PACK, copy_of_small_pack
from triage.knowledge.overlay import Numbers
from triage.knowledge.overlay_file import Overlay
from triage.knowledge.pack_builder import build_pack, build_written, rules_hash
from triage.knowledge.problems import PackProblems
from triage.learning.acceptance import MAX_PER_DAY, accept

WRITTEN = build_written(SMALL_PACK)
REGIONS = {ANYWHERE.id: ANYWHERE}
DAY = "2026-03-01"


def proposal(firm="", **calls):
    numbers = Numbers(calls={name.replace("_", "-"): value for name, value in calls.items()})
    return Overlay(WRITTEN.id, rules_hash(SMALL_PACK), 40, (1.5, 1.25), numbers, firm)


def test_the_overlay_says_who_when_and_from_how_many_outcomes(tmp_path):
    path = accept(proposal(element_open=75.0), WRITTEN, REGIONS, tmp_path / "overlays", "  Ada Example ", DAY)
    assert path.name == "2026-03-01-01.yaml"
    fields = yaml.safe_load(path.read_text("utf-8"))
    assert (fields["accepted_by"], fields["accepted_on"], fields["outcomes"]) == ("Ada Example", DAY, 40)
    assert fields["rules"] == rules_hash(SMALL_PACK)
    assert [entry.name for entry in path.parent.iterdir()] == [path.name]


def test_the_pack_beside_it_is_built_with_it(tmp_path):
    folder = copy_of_small_pack(tmp_path)
    accept(proposal(element_open=75.0), WRITTEN, REGIONS, folder / "overlays", "Ada", DAY)
    assert build_pack(folder).faults["element-open"].calls_per_1000 == 75.0


def test_a_second_one_of_the_day_stands_beside_the_first(tmp_path):
    first = accept(proposal(element_open=75.0), WRITTEN, REGIONS, tmp_path, "Ada", DAY)
    before = first.read_bytes()
    second = accept(proposal(element_open=80.0), WRITTEN, REGIONS, tmp_path, "Ada", DAY)
    assert (second.name, first.read_bytes()) == ("2026-03-01-02.yaml", before)


def test_a_firms_own_goes_into_its_own_folder(tmp_path):
    path = accept(proposal("north", element_open=75.0), WRITTEN, REGIONS, tmp_path, "Ada", DAY)
    assert path.relative_to(tmp_path).parts == ("firms", "north", "2026-03-01-01.yaml")


@pytest.mark.parametrize("who", ["", "   ", "Ada\nEve", "x" * 101, "Ada\x1b[31m"])
def test_nobody_cannot_accept(tmp_path, who):
    with pytest.raises(PackProblems, match="who: must be one line of 1 to 100 signs"):
        accept(proposal(element_open=75.0), WRITTEN, REGIONS, tmp_path / "overlays", who, DAY)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("overlay", "told"),
    [
        (proposal(gremlins=3.0), "has no 'gremlins'"),
        (proposal("../../north", element_open=75.0), "firm: is no id"),
        (proposal(element_open=float("nan")), "must be a number"),
    ],
    ids=["unknown fault", "firm that leads elsewhere", "no number"],
)
def test_what_cannot_be_read_back_is_not_written(tmp_path, overlay, told):
    with pytest.raises(PackProblems, match=told):
        accept(overlay, WRITTEN, REGIONS, tmp_path / "overlays", "Ada", DAY)
    assert list(tmp_path.iterdir()) == []


def test_a_danger_made_less_likely_is_not_accepted(tmp_path):
    folder = copy_of_small_pack(tmp_path)
    faults = folder / "faults.yaml"
    faults.write_text(faults.read_text("utf-8").replace("band: qualified", "band: make-safe", 1), "utf-8")
    overlay = Overlay("small-pack", rules_hash(folder), 40, (1.5, 1.25), Numbers(calls={"element-open": 49.0}))
    with pytest.raises(PackProblems, match="element-open: is less likely than in the pack as written, in anywhere"):
        accept(overlay, build_written(folder), REGIONS, folder / "overlays", "Ada", DAY)
    assert not (folder / "overlays").exists()


def test_a_folder_that_cannot_be_written_is_told(tmp_path):
    (tmp_path / "overlays").write_text("a file", "utf-8")
    with pytest.raises(PackProblems, match=r"overlays:1: folder: cannot be written: .*give another folder"):
        accept(proposal(element_open=75.0), WRITTEN, REGIONS, tmp_path / "overlays", "Ada", DAY)


def test_a_hundredth_overlay_of_a_day_is_refused(tmp_path):
    for number in range(1, MAX_PER_DAY + 1):
        (tmp_path / f"{DAY}-{number:02d}.yaml").touch()
    with pytest.raises(PackProblems, match="has 99 overlays of 2026-03-01"):
        accept(proposal(element_open=75.0), WRITTEN, REGIONS, tmp_path, "Ada", DAY)
