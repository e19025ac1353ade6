"""The overlay of a pack: read strictly, laid over, told with line and remedy."""

import pytest

from tests.knowledge.small_packs import copy_of_small_pack, edit
from triage.knowledge.overlay import Numbers
from triage.knowledge.overlay_file import Overlay, newest_overlay, overlay_text, read_overlay
from triage.knowledge.pack_builder import build_pack, build_written, content_hash, overlaid, rules_hash
from triage.knowledge.problems import PackProblems

GOOD = """\
pack: small-pack
rules: {rules}
accepted_by: Ada Example
accepted_on: '2026-03-01'
outcomes: 40
log_score: {{before: 1.5, after: 1.25}}
calls: {{element-open: 75.0}}
effects:
- fault: element-open
  condition: heat
  when: [electronic]
  levels: {{full: 0.1, none: 0.9}}
- fault: lamp-failed
  condition: lamp
  levels: {{lit: 0.25, dark: 0.75}}
answers:
  heats:
    none: {{normal: 0.2, no-heat: 0.8}}
"""


@pytest.fixture
def pack(tmp_path):
    folder = copy_of_small_pack(tmp_path)
    (folder / "overlays").mkdir()
    return folder


def lay(folder, text=GOOD, name="2026-03-01-01"):
    path = folder / "overlays" / f"{name}.yaml"
    path.write_text(text.format(rules=rules_hash(folder)) if "{rules}" in text else text, "utf-8")
    return path


def refused(folder):
    with pytest.raises(PackProblems) as caught:
        build_pack(folder)
    return str(caught.value).splitlines()


def test_a_pack_is_built_with_its_overlay_and_its_version_tells(pack):
    written = build_pack(pack)
    lay(pack)
    laid = build_pack(pack)
    assert laid.faults["element-open"].calls_per_1000 == 75.0
    assert laid.faults["lamp-failed"].effects[0].levels == (0.25, 0.75)
    assert [effect.levels for effect in laid.faults["element-open"].effects if effect.when] == [(0.1, 0.9)]
    assert laid.observations["heats"].answer_probabilities[1] == (0.2, 0.8)
    assert laid.version.startswith(f"{written.version}-")
    assert build_written(pack).version == written.version


def test_another_overlay_is_another_version(pack):
    lay(pack)
    first = build_pack(pack).version
    lay(pack, GOOD.replace("75.0", "76.0"))
    assert build_pack(pack).version != first


def test_the_newest_counts_and_one_may_be_named_instead(pack):
    old = lay(pack)
    lay(pack, GOOD.replace("75.0", "99.0"), "2026-03-01-02")
    assert build_pack(pack).faults["element-open"].calls_per_1000 == 99.0
    assert overlaid(build_written(pack), pack, old).faults["element-open"].calls_per_1000 == 75.0


def test_an_overlay_of_one_firm_is_not_the_sites(pack):
    (pack / "overlays" / "firms" / "north").mkdir(parents=True)
    (pack / "overlays" / "firms" / "north" / "2026-03-01-01.yaml").write_text("not even an overlay", "utf-8")
    assert newest_overlay(pack / "overlays") is None
    assert build_pack(pack).version == build_written(pack).version
    assert content_hash(pack) == build_pack(pack).version.rpartition("-")[2]


def test_an_overlay_of_rules_that_have_changed_since_is_refused_with_what_to_do(pack):
    lay(pack)
    before = rules_hash(pack)
    edit(pack, "faults", "calls_per_1000: 50", "calls_per_1000: 51")
    (told,) = refused(pack)
    assert told == (
        f"overlays/2026-03-01-01.yaml:2: overlay, rules: is '{before}', and that of this pack is '{rules_hash(pack)}'. "
        "The pack has changed since: learn again from the outcomes, or delete it."
    )


def test_a_text_may_change_without_the_overlay_falling(pack):
    before = rules_hash(pack)
    (pack / "text").mkdir(exist_ok=True)
    (pack / "text" / "more.yaml").write_text("a: b\n", "utf-8")
    assert rules_hash(pack) == before


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        (
            "{{full: 0.1, none: 0.9}}",
            "{{full: 0.2, none: 0.9}}",
            "12: overlay, effects 1, levels: adds up to 1.1. Make the chances add up to 1.",
        ),
        (
            "{{normal: 0.2, no-heat: 0.8}}",
            "{{normal: 0.2, no-heat: 0.7}}",
            "18: overlay, answers, heats, none: adds up to 0.9.",
        ),
        (
            "{{lit: 0.25, dark: 0.75}}",
            "{{lit: 0, dark: 1}}",
            "15: overlay, effects 2, levels, lit: must be a number from 1e-06 to 1, not 0.",
        ),
        (
            "{{lit: 0.25, dark: 0.75}}",
            "{{lit: 0.25, dark: 0.75, dim: 0.1}}",
            "15: overlay, effects 2, levels, dim: is not a field here.",
        ),
        (
            "{{lit: 0.25, dark: 0.75}}",
            "{{lit: .nan, dark: 0.75}}",
            "15: overlay, effects 2, levels, lit: must be a number",
        ),
        ("element-open: 75.0", "gremlins: 75.0", "7: overlay, calls, gremlins: has no 'gremlins'."),
        ("element-open: 75.0", "element-open: -1", "7: overlay, calls, element-open: must be a number from 1e-06"),
        ("fault: lamp-failed", "fault: gremlins", "13: overlay, effects 2, fault: has no 'gremlins'."),
        (
            "condition: lamp",
            "condition: heat",
            "14: overlay, effects 2, condition: is no effect of this fault that outcomes may change.",
        ),
        ("fault: element-open", "fault: board-dead", "10: overlay, effects 1, condition: is no effect of this fault"),
        (
            "    none: {{normal",
            "    some: {{normal",
            "18: overlay, answers, heats, some: has no 'some'. Allowed: full, none.",
        ),
        ("  heats:", "  lamp-state:", "17: overlay, answers, lamp-state: has no answers that outcomes may change."),
        ("outcomes: 40", "outcomes: 0", "5: overlay, outcomes: must be a number from 1 to"),
        ("'2026-03-01'", "soon", "4: overlay, accepted_on: is no date: 'soon'. Write it as '2026-03-01'."),
        ("accepted_by: Ada Example\n", "", "1: overlay: `accepted_by` is missing. Give a text."),
        (
            "pack: small-pack",
            "pack: gas-oven",
            "1: overlay, pack: is 'gas-oven', and that of this pack is 'small-pack'.",
        ),
        ("outcomes: 40", "outcomes: 40\nbands: {{}}", "6: overlay, bands: is not a field here."),
        ("outcomes: 40", "outcomes: 40\nfirm: ../north", "6: overlay, firm: '../north' is not an id."),
    ],
)
def test_each_mistake_is_told_with_its_line_and_a_remedy(pack, old, new, told):
    assert GOOD.count(old) == 1
    lay(pack, GOOD.replace(old, new))
    assert refused(pack)[0].startswith(f"overlays/2026-03-01-01.yaml:{told}")


def test_an_empty_overlay_and_one_of_a_hundred_megabytes_are_refused(pack):
    path = lay(pack, "")
    assert refused(pack) == [
        "overlays/2026-03-01-01.yaml:1: file: does not hold named entries. Start with `name:` lines."
    ]
    with path.open("r+b") as file:
        file.truncate(100_000_000)
    assert refused(pack) == ["overlays/2026-03-01-01.yaml:1: file: is larger than 1000000 bytes. Split it."]


def test_what_is_written_reads_back_the_same(pack):
    written = build_written(pack)
    numbers = Numbers(
        calls={"element-open": 1 / 3, "board-dead": 20.0},
        effects={
            ("element-open", "heat", frozenset({"electronic"})): (1 / 3, 2 / 3),
            ("lamp-failed", "lamp", None): (1e-9, 1 - 1e-9),
        },
        answers={("heats", "none"): (0.125, 0.875)},
    )
    overlay = Overlay("small-pack", rules_hash(pack), 7, (1.5, 1.25), numbers, firm="north")
    path = lay(pack, overlay_text(overlay, written))
    back = read_overlay(path, path.name, written, overlay.rules, proposal=True)
    assert (back.outcomes, back.firm, back.log_score, back.accepted_by) == (7, "north", (1.5, 1.25), "")
    assert back.numbers.calls == pytest.approx(numbers.calls, rel=1e-5)
    assert back.numbers.effects.keys() == numbers.effects.keys()
    for key, row in back.numbers.effects.items():
        assert sum(row) == pytest.approx(1.0, abs=1e-12)
        assert row == pytest.approx(numbers.effects[key], abs=2e-6)
        assert min(row) > 0
    assert back.numbers.answers == {("heats", "none"): (0.125, 0.875)}


def test_a_proposal_is_no_overlay_until_somebody_accepts_it(pack):
    overlay = Overlay("small-pack", rules_hash(pack), 7, (1.5, 1.25), Numbers(calls={"element-open": 60.0}))
    lay(pack, overlay_text(overlay, build_written(pack)))
    assert refused(pack) == [
        f"overlays/2026-03-01-01.yaml:1: overlay: `accepted_{key}` is missing. Give a text." for key in ("by", "on")
    ]
