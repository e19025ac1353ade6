"""The `measurement` part of an observation: intervals that cover the line, and what is said where they do not."""

import pytest

from tests.builders import electric_oven
from tests.knowledge.small_packs import SMALL_PACK, copy_of_small_pack, edit, told_about
from triage.engine.pack import MeasurementSpec
from triage.knowledge.pack_builder import build_pack

OPTIONS = "  options: [normal, no-heat]\n"
AFTER = "  requires_answers: {heats: [normal, no-heat]}\n"
GOOD = "  measurement: {kind: meter, quantity: share, intervals: {no-heat: [0, 0.3], normal: [0.3, 1.5]}}\n"


def pack_measuring(folder, measurement, hanging=""):
    """The small pack with a reading of how it heats, on which nothing hangs unless told."""
    pack = copy_of_small_pack(folder)
    edit(pack, "observations", OPTIONS, OPTIONS + measurement)
    edit(pack, "observations", AFTER, hanging)
    return pack


def test_a_reading_has_what_its_author_wrote(tmp_path):
    gauge = build_pack(pack_measuring(tmp_path, GOOD)).observations["heats"].measurement
    assert isinstance(gauge, MeasurementSpec)
    assert (gauge.kind, gauge.quantity) == ("meter", "share")
    assert gauge.intervals == {"no-heat": (0.0, 0.3), "normal": (0.3, 1.5)}


def test_without_one_a_question_is_answered_in_words_only():
    assert build_pack(SMALL_PACK).observations["heats"].measurement is None


@pytest.mark.parametrize(
    ("intervals", "what"),
    [
        ("{no-heat: [0, 0.3], normal: [0.4, 1.5]}", "do not cover the line."),
        ("{no-heat: [0.3, 1.5], normal: [0, 0.3]}", "do not cover the line."),
        ("{no-heat: [0, 0.5], normal: [0.3, 1.5]}", "do not cover the line."),
        ("{no-heat: [0, 0.3]}", "leaves out normal."),
        ("{no-heat: [0.3, 0], normal: [0.3, 1.5]}", "must be two rising numbers, not [0.3, 0]."),
        ("{no-heat: [0], normal: [0.3, 1.5]}", "must be two rising numbers, not [0]."),
        ("{no-heat: [.nan, 1], normal: [1, 1.5]}", "must be two rising numbers, not [nan, 1]."),
        ("{no-heat: 0.3, normal: [0.3, 1.5]}", "must be two rising numbers, not 0.3."),
        ("{no-heat: [0, 0.3], warm: [0.3, 1.5]}", "has no 'warm'."),
    ],
)
def test_intervals_that_do_not_cover_the_line_are_refused(tmp_path, intervals, what):
    told = told_about(
        pack_measuring(tmp_path, f"  measurement: {{kind: meter, quantity: share, intervals: {intervals}}}\n")
    )
    assert any(line.startswith("small_pack/observations.yaml:") and what in line for line in told), told


@pytest.mark.parametrize(
    ("measurement", "what"),
    [
        (
            "{kind: scales, quantity: share, intervals: {no-heat: [0, 1], normal: [1, 2]}}",
            "has no 'scales'. Allowed: meter",
        ),
        (
            "{kind: meter, quantity: weight, intervals: {no-heat: [0, 1], normal: [1, 2]}}",
            "has no 'weight'. Allowed: watts",
        ),
        ("{kind: meter, quantity: share}", "`intervals` is missing."),
        ("{kind: gasket, quantity: pattern, patterns: {no-heat: tight, normal: spot}}", "does not name every pattern."),
        (
            "{kind: meter, quantity: share, intervals: {no-heat: [0, 1], normal: [1, 2]}, unit: W}",
            "is not a field here.",
        ),
    ],
)
def test_a_reading_that_nothing_can_take_is_refused(tmp_path, measurement, what):
    told = told_about(pack_measuring(tmp_path, f"  measurement: {measurement}\n"))
    assert any(what in line for line in told), told


def test_a_reading_that_reports_nothing_is_refused(tmp_path):
    pack = copy_of_small_pack(tmp_path)
    edit(pack, "observations", "fuel:\n", "fuel:\n" + GOOD.replace("no-heat", "gas").replace("normal", "electric"))
    assert any("fuel" in line and "measurement" in line for line in told_about(pack))


def test_no_question_hangs_on_a_reading(tmp_path):
    """The small pack asks after the lamp once it was told how it heats."""
    told = told_about(pack_measuring(tmp_path, GOOD, hanging=AFTER))
    assert any(
        "lamp-state, requires_answers: hangs on heats, which may be answered in figures." in line for line in told
    ), told


def test_an_option_beyond_the_line_needs_no_interval():
    gauge = electric_oven().observations["thermometer-swing"].measurement
    assert gauge.overrides == {"keeps-climbing": ("climb", 50.0)}
    assert "keeps-climbing" not in gauge.intervals
