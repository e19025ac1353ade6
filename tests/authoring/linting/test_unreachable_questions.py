"""Questions nobody comes to are found, with the reason."""

from dataclasses import replace

import pytest

from tests.builders import ANYWHERE, ELECTRIC_OVEN, OBSERVATIONS, TASKS, by_id, electric_oven, make_pack
from triage.authoring.linting.finding import Gravity, PackSource
from triage.authoring.linting.unreachable_questions import never_asked, unreachable_questions
from triage.engine.model import compile_model

PLACES = PackSource(ELECTRIC_OVEN)
METER_TASK = by_id(replace(TASKS["heat-it"], outcome="meter"))


def pack_with(**changes):
    """The small pack with a task for its trial, and with the question after the screen changed."""
    code = replace(OBSERVATIONS["code-stays"], **changes)
    return make_pack(observations=OBSERVATIONS | by_id(code), tasks=TASKS | METER_TASK)


def told(pack):
    return [
        (f.gravity, f.problem.where, f.problem.what)
        for f in unreachable_questions(compile_model(pack, ANYWHERE), PLACES)
    ]


def test_every_question_of_a_sound_pack_can_be_asked():
    assert told(pack_with()) == []


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        ({"requires_answers": {"code-stays": frozenset({"goes"})}}, "it waits for code-stays, which waits for it"),
        ({"requires_answers": {"screen-shows": frozenset()}}, "no answer to screen-shows leads to it"),
        ({"requires_answers": {"dial-turns": frozenset({"slips"})}}, "it waits for dial-turns, which is not asked"),
        (
            {"requires_variant": {"control": frozenset()}},
            "no control has both what it needs and what the questions before it need",
        ),
        ({"method": "trial"}, "it has to be tried out, and no task has it as its outcome"),
    ],
)
def test_what_can_never_be_asked_is_told_with_its_reason(changes, reason):
    ((gravity, where, what),) = told(pack_with(**changes))
    assert (where, what) == ("code-stays", f"can never be asked: {reason}.")
    assert gravity is (Gravity.REMARK if "method" in changes else Gravity.MISTAKE)


def test_a_kind_of_oven_that_the_parent_excludes_is_an_obstacle():
    screen = replace(OBSERVATIONS["screen-shows"], requires_variant={"control": frozenset({"mechanical"})})
    pack = make_pack(observations=OBSERVATIONS | by_id(screen), tasks=TASKS | METER_TASK)
    ((_, where, what),) = told(pack)
    assert where == "code-stays"
    assert "no control has both" in what


def test_what_was_not_asked_in_many_checks_is_a_remark_that_says_how_many():
    model = compile_model(pack_with(), ANYWHERE)
    asked = {question.id for question in model.questions} - {"heats", "control", "meter"}
    found = never_asked(model, asked, 700, PLACES)
    assert [(f.gravity, f.problem.where) for f in found] == [
        (Gravity.REMARK, "heats"),
        (Gravity.REMARK, "control"),
    ]
    assert found[0].problem.what == "was not asked in any of 700 simulated checks."
    assert [f.problem.file.rsplit("/", 1)[1] for f in found] == ["observations.yaml", "variants.yaml"]


def test_nothing_in_the_pack_people_use_is_out_of_reach_by_mistake():
    mistakes = [each for each in told(electric_oven()) if each[0] is Gravity.MISTAKE]
    assert mistakes == []
