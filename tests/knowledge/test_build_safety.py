"""Red flags and tasks from YAML: the part of a pack that outranks its odds."""

import pytest

from tests.knowledge.small_packs import SMALL_PACK, copy_of_small_pack, edit, told_about
from triage.engine.pack import Level
from triage.knowledge.pack_builder import build_pack

PACK = build_pack(SMALL_PACK)
SECOND_FLAG = """
pane-loose:
  level: caution
  signal: CAUTION
  switches: any
  rule: keep-it-shut
  contact: technician
"""


def test_a_red_flag_has_what_its_author_wrote():
    flag = PACK.red_flags["glass-down"]
    assert (flag.level, flag.signal, flag.switches, flag.contact) == (Level.STOP, "WARNING", "away", "technician")
    assert flag.phone_numbers == ("emergency",)
    assert flag.signs == (("lamp-state", "broken-glass"),)
    assert flag.picture == "front"


def test_the_order_of_the_file_is_the_order_to_act_in(tmp_path):
    folder = copy_of_small_pack(tmp_path)
    file = folder / "red_flags.yaml"
    file.write_text(file.read_text("utf-8") + SECOND_FLAG, "utf-8")
    flags = build_pack(folder).red_flags
    assert [(flag.id, flag.rank) for flag in flags.values()] == [("glass-down", 0), ("pane-loose", 1)]
    assert flags["pane-loose"].signs == ()


def test_a_flag_may_have_several_signs(tmp_path):
    folder = copy_of_small_pack(tmp_path)
    edit(
        folder,
        "red_flags",
        "signs: {observation: lamp-state, option: broken-glass}",
        "signs:\n    - {observation: lamp-state, option: broken-glass}\n    - {observation: lamp-state, option: out}",
    )
    raised = "flags: {broken-glass: glass-down}"
    edit(folder, "observations", raised, "flags: {broken-glass: glass-down, out: glass-down}")
    assert build_pack(folder).red_flags["glass-down"].signs == (("lamp-state", "broken-glass"), ("lamp-state", "out"))


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("level: stop", "level: halt", ":2: glass-down, level: has no 'halt'. Allowed: emergency, stop, caution."),
        (
            "signal: WARNING",
            "signal: warning",
            ":3: glass-down, signal: has no 'warning'. Allowed: DANGER, WARNING, CAUTION, NOTICE.",
        ),
        ("switches: away", "switches: some", ":4: glass-down, switches: has no 'some'. Allowed: never, away, any."),
        (
            "phone_numbers: [emergency]",
            "phone_numbers: [aunt]",
            ":7: glass-down, phone_numbers: has no 'aunt'. Allowed: emergency, gas, network.",
        ),
        ("  rule: broken-glass-cuts\n", "", ":2: glass-down: `rule` is missing. Give a text."),
    ],
)
def test_what_is_wrong_with_a_flag_is_told(tmp_path, old, new, told):
    folder = copy_of_small_pack(tmp_path)
    edit(folder, "red_flags", old, new)
    assert told_about(folder) == [f"small_pack/red_flags.yaml{told}"]


def test_a_task_has_what_its_author_wrote():
    task = PACK.tasks["change-lamp"]
    assert (task.competence, task.needs_heat, task.minutes, task.picture) == ("ordinary", False, 10.0, "cavity")
    assert (task.helps, task.cures) == (frozenset({"lamp-failed"}), frozenset({"lamp-failed"}))
    assert (task.unsafe_with, task.not_after) == (frozenset({"board-dead"}), frozenset({"glass-down"}))
    assert task.gates == ("cold", "supply-off")
    assert task.requires_variant == {"element-view": frozenset({"visible"})}
    assert task.outcome == "did-change-lamp"


def test_curing_shows_on_a_condition_of_its_own():
    condition = PACK.conditions["cured-by-change-lamp"]
    assert condition.levels == ("no", "yes")
    assert condition.baseline[0] > 0.9
    (effect,) = [e for e in PACK.faults["lamp-failed"].effects if e.condition == condition.id]
    assert effect.levels[1] > 0.7
    assert not any(e.condition == condition.id for e in PACK.faults["element-open"].effects)


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        (
            "competence: ordinary",
            "competence: child",
            ":2: change-lamp, competence: has no 'child'. Allowed: ordinary, instructed, skilled.",
        ),
        (
            "not_after: [glass-down]",
            "not_after: [rain]",
            ":6: change-lamp, not_after: has no 'rain'. Allowed: glass-down.",
        ),
        (
            "minutes: 10",
            "minutes: 900",
            ":9: change-lamp, minutes: must be a number from 0 to 600, not 900. Give one in that range.",
        ),
        ("  picture: cavity\n", "", ":2: change-lamp: `picture` is missing. Give a text."),
    ],
)
def test_what_is_wrong_with_a_task_is_told(tmp_path, old, new, told):
    folder = copy_of_small_pack(tmp_path)
    edit(folder, "tasks", old, new)
    assert told_about(folder) == [f"small_pack/tasks.yaml{told}"]
