"""Observations from YAML: who says what at which level, how far answers are trusted, and questions that come free."""

import pytest

from tests.knowledge.small_packs import SMALL_PACK, copy_of_small_pack, edit, told_about
from triage.engine.enums import SafetyGate
from triage.knowledge.pack_builder import build_pack

PACK = build_pack(SMALL_PACK)


def built_with(folder, old, new):
    pack = copy_of_small_pack(folder)
    edit(pack, "observations", old, new)
    return build_pack(pack)


def test_an_observation_has_what_its_author_wrote():
    lamp = PACK.observations["lamp-state"]
    assert (lamp.method, lamp.effort_seconds, lamp.picture, lamp.reports) == ("look", 10.0, "cavity", "lamp")
    assert lamp.options == ("works", "out", "broken-glass")
    assert lamp.requires_answers == {"heats": frozenset({"normal", "no-heat"})}
    assert lamp.flags == {"broken-glass": "glass-down"}
    assert (lamp.urgent, lamp.task) == (False, "")


def test_an_observation_that_reports_nothing_is_a_record():
    assert (PACK.observations["fuel"].reports, PACK.observations["fuel"].answer_probabilities) == (None, ())


def test_every_row_of_answers_adds_up_to_one():
    for observation in PACK.observations.values():
        for row in observation.answer_probabilities:
            assert sum(row) == pytest.approx(1.0, abs=1e-12)


def test_full_trust_leaves_the_table_as_written(tmp_path):
    heats = built_with(
        tmp_path, "trust: 0.9\n  picture: cavity\n  options: [normal", "trust: 1\n  picture: cavity\n  options: [normal"
    ).observations["heats"]
    assert heats.answer_probabilities[0] == pytest.approx((0.93 / 0.94, 0.01 / 0.94))
    assert heats.answer_probabilities[1] == pytest.approx((0.01 / 0.94, 0.93 / 0.94))


def test_less_trust_draws_every_row_towards_what_anyone_says():
    """With trust 0.9 one answer in ten is what people with any oven would say."""
    heats, sound = PACK.observations["heats"], PACK.conditions["heat"].baseline
    full, none = (0.93 / 0.94, 0.01 / 0.94), (0.01 / 0.94, 0.93 / 0.94)
    anyone = [sound[0] * a + sound[1] * b for a, b in zip(full, none, strict=True)]
    assert heats.answer_probabilities[1] == pytest.approx(
        [0.9 * p + 0.1 * a for p, a in zip(none, anyone, strict=True)]
    )


def test_a_level_without_a_row_is_told_as_in_a_sound_oven(tmp_path):
    lamp = built_with(tmp_path, "    dark: {out: almost-always}\n", "").observations["lamp-state"]
    assert lamp.answer_probabilities[1] == pytest.approx(lamp.answer_probabilities[0])


def test_options_named_like_the_levels_need_no_table():
    screen = PACK.observations["screen-shows"]
    assert screen.answer_probabilities[0][0] > 0.95
    assert screen.answer_probabilities[1][1] > screen.answer_probabilities[1][0]


def test_a_hard_sign_is_hardly_ever_seen_by_mistake(tmp_path):
    soft = built_with(tmp_path, "  hard_sign: true\n", "").observations["screen-shows"]
    assert PACK.observations["screen-shows"].answer_probabilities[0][1] < soft.answer_probabilities[0][1]


def test_a_kind_of_oven_that_is_asked_after_is_taken_at_its_word():
    control = PACK.observations["control"]
    assert (control.reports, control.method, control.effort_seconds, control.picture) == (
        "control",
        "look",
        8.0,
        "controls",
    )
    assert control.answer_probabilities == ((1.0, 0.0), (0.0, 1.0))
    assert control.requires_answers == {"heats": frozenset({"no-heat"})}


def test_a_kind_of_oven_that_is_not_asked_after_has_no_question():
    assert "element-view" not in PACK.observations


def test_the_gates_are_questions_that_say_nothing_about_the_oven():
    for gate in SafetyGate:
        assert PACK.observations[gate].reports is None
        assert PACK.observations[gate].options == ("yes", "no", "unsure")


def test_what_came_of_a_task_is_asked_on_its_own_page_and_is_evidence():
    outcome = PACK.observations["did-change-lamp"]
    assert outcome.task == "change-lamp"
    (not_cured, cured) = outcome.answer_probabilities
    assert cured[outcome.options.index("fixed")] > 5 * not_cured[outcome.options.index("fixed")]


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        (
            "method: memory\n  effort_seconds: 10",
            "method: guess\n  effort_seconds: 10",
            ":13: heats, method: has no 'guess'. Allowed: memory, look, trial.",
        ),
        (
            "effort_seconds: 5\n  picture: front\n  options: [stays",
            "effort_seconds: 0\n  picture: front\n  options: [stays",
            ":3: complaint, effort_seconds: must be a number from 1 to 7200, not 0. Give one in that range.",
        ),
        (
            "answer_frequencies: as-named",
            "answer_frequencies: by-name",
            (
                ":30: screen-shows, answer_frequencies: must hold named values, not 'by-name'. "
                "Write `name: value` lines below it."
            ),
        ),
    ],
)
def test_what_is_wrong_with_a_question_is_told(tmp_path, old, new, told):
    pack = copy_of_small_pack(tmp_path)
    edit(pack, "observations", old, new)
    assert f"small_pack/observations.yaml{told}" in told_about(pack)
