"""The kit on a job sheet is the engine's, in words."""

from tests.firm_builders import ANSWERS, check_after
from tests.household.checks_done import answers_of
from triage.engine.kit import kit_for
from triage.jobsheet.kit import MIN_GAIN, kit_of
from triage.knowledge.library import library

WORDS = library().texts_for("gb-eng")


def test_it_is_the_best_kit_for_whoever_the_likeliest_cause_calls_for():
    check = check_after(ANSWERS)
    result = kit_of(check, WORDS, "fan-element-open")
    best = kit_for(check.belief, "technician")
    assert result["first_visit_probability"] == round(best.completion_probability, 4)
    assert result["max_probability"] == round(best.max_probability, 4)
    assert [part["part"] for part in result["parts"]] == [c.part for c in best.parts if c.gain >= MIN_GAIN]
    assert result["parts"][0]["name"] == WORDS.parts[best.parts[0].part]


def test_where_nobody_carries_parts_a_technicians_kit_is_told():
    check = check_after(ANSWERS)
    householder = next(f.id for f in library().pack.faults.values() if f.performed_by == "householder")
    assert kit_of(check, WORDS, householder) == kit_of(check, WORDS, "fan-element-open")


def kit_after(answers, region="gb-eng"):
    check = check_after(answers.items(), region)
    return kit_of(check, library().texts_for(region), check.conclusion().verdict.causes[0].fault)


def test_the_parts_are_in_the_words_of_the_place():
    kit = kit_after(answers_of("grill-element-open", "no-heat", "us"), "us")
    assert any("broiler element" in carried["name"] for carried in kit["parts"])


def test_an_electricians_kit_holds_no_heating_element():
    carried = [part["part"] for part in kit_after({"complaint": "smell", "burn-marks": "wall-switch"})["parts"]]
    assert carried[0] == "cooker-switch"
    assert "ring-element" not in carried
