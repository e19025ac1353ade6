"""When a reading is offered beside a question, and how readings are ordered on the advice."""

from dataclasses import replace

import pytest

from tests.builders import ANYWHERE, OBSERVATIONS, by_id, electric_oven, make_pack, make_task
from triage.engine import Question, compile_model, infer_belief, run_check
from triage.engine.expected_information import ValueOfInformation
from triage.engine.next_question import question_value
from triage.engine.pack import MeasurementSpec
from triage.engine.reading_tasks import better_test, measured_outcome, ranked_by_value

GAUGE = MeasurementSpec("meter", "share", {"low": (0.0, 0.6), "as-rated": (0.6, 1.4)})
FAULTS = frozenset({"element-open", "board-dead", "programmer-not-set"})
METER_TASK = make_task("read-meter", outcome="meter", helps=FAULTS)
SCREEN_TASK = make_task("read-screen", outcome="screen-shows", helps=FAULTS)
TOLD = {"complaint": "too-slow", "danger": "none"}
EVERYTHING_ELSE = dict.fromkeys(("screen-shows", "lamp-state", "control", "sparks", "pane", "shock"), "cant-tell")


def pack_with(effort=20.0, **changes):
    """The small pack with a meter reading and its task; the meter tells heat as well as the question does."""
    meter = replace(
        OBSERVATIONS["meter"],
        measurement=GAUGE,
        effort_seconds=effort,
        answer_probabilities=((0.99, 0.01), (0.01, 0.99), (0.01, 0.99)),
    )
    return make_pack(
        observations={**OBSERVATIONS, "meter": meter}, tasks=by_id(replace(METER_TASK, **changes), SCREEN_TASK)
    )


def better(pack, answers=TOLD, question="lamp-state"):
    return better_test(ANYWHERE, infer_belief(compile_model(pack, ANYWHERE), answers), answers, question)


def test_a_reading_that_tells_more_per_second_than_the_question_is_named():
    assert better(pack_with()).id == "read-meter"


def test_a_reading_that_takes_too_long_for_what_it_tells_is_not():
    assert better(pack_with(effort=7200.0)) is None


def test_a_reading_already_taken_is_not_named_again():
    assert better(pack_with(), {**TOLD, "meter": "low"}) is None


@pytest.mark.parametrize(
    "changes",
    [{"competence": "skilled"}, {"unsafe_with": frozenset({"element-open"})}, {"helps": frozenset()}],
)
def test_a_task_that_may_not_be_offered_is_never_named(changes):
    assert better(pack_with(**changes)) is None


def test_a_caution_takes_a_heated_reading_away():
    answers = {**TOLD, "pane": "loose"}
    assert better(pack_with(needs_heat=True), answers) is None
    assert better(pack_with(needs_heat=False), answers).id == "read-meter"


def test_the_next_question_carries_it():
    step = run_check(pack_with(), ANYWHERE, [*TOLD.items(), ("heats", "cant-tell"), ("screen-shows", "cant-tell")]).step
    assert isinstance(step, Question)
    assert step.better_test.id == "read-meter"


def test_an_outcome_in_words_is_no_reading():
    pack = pack_with()
    assert measured_outcome(pack, SCREEN_TASK) is None
    assert measured_outcome(pack, METER_TASK).id == "meter"


def test_on_the_advice_readings_change_places_among_themselves_only():
    pack = electric_oven()
    belief = infer_belief(compile_model(pack, ANYWHERE), {"complaint": "slow-or-cool", "danger": "none"})
    tasks = tuple(pack.tasks[name] for name in ("thermometer-test", "note-code", "meter-test", "paper-strip"))
    ordered = ranked_by_value(belief, tasks)
    assert ordered[1].id == "note-code"
    assert sorted(t.id for t in ordered) == sorted(t.id for t in tasks)
    outlook = ValueOfInformation(belief)
    worths = [
        question_value(outlook, pack.observations[t.outcome]).bits_per_second for t in ordered if t.id != "note-code"
    ]
    assert worths == sorted(worths, reverse=True)
    assert ranked_by_value(belief, tasks[:2]) == tasks[:2]
