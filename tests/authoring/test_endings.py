"""Checks walked quickly end as the engine ends them."""

from random import Random

import pytest

from tests.builders import ANYWHERE, electric_oven, make_pack
from triage.authoring.endings import Checks, Ending
from triage.authoring.simulated_users import draw_user
from triage.engine.check import Emergency, OutOfScope, Question, Result, run_check
from triage.engine.model import compile_model
from triage.engine.pack import CANT_TELL


@pytest.fixture(scope="module")
def oven():
    return Checks(electric_oven(), ANYWHERE)


def test_every_check_is_asked_and_ends_as_the_engine_would(oven):
    dice, pack, seen = Random("endings"), electric_oven(), set()
    for _ in range(120):
        household = draw_user(oven.model, dice)
        told = {name: household.answer(name) for name in pack.observations}
        walked = oven.walk(told)
        for length in range(2, len(walked.trail)):
            step = run_check(pack, ANYWHERE, walked.trail[:length]).step
            assert isinstance(step, Question)
            assert step.observation == walked.trail[length][0]
        step = run_check(pack, ANYWHERE, walked.trail).step
        assert walked.ending == expected(step)
        seen.add(type(step))
    assert seen >= {Result, Emergency}


def expected(step):
    if isinstance(step, OutOfScope):
        return Ending("", "", exit=step.reason)
    flags = step.flags if isinstance(step, Emergency) else step.cautions
    tasks = frozenset(task.id for task in step.tasks) if isinstance(step, Result) else frozenset()
    return Ending(step.verdict.band.value, step.verdict.family, tasks, tuple(flag.id for flag in flags))


def test_the_danger_page_comes_second_and_takes_the_first_sign_that_holds():
    checks = Checks(make_pack(), ANYWHERE)
    told = {"complaint": "is-dead", "sparks": "bright-spot", "shock": "felt-one"}
    walked = checks.walk(told)
    assert walked.trail == (("complaint", "is-dead"), ("sparks", "bright-spot"))
    assert walked.ending.flags == ("arc-burning",)
    assert checks.walk({"complaint": "is-dead"}).trail[1] == ("danger", "none")


def test_another_appliance_is_a_way_out_unless_danger_comes_first():
    checks = Checks(make_pack(complaints=()), ANYWHERE)
    pack = checks.pack
    assert checks._ending({"fuel": "gas"}, "gas-oven", None) == Ending("", "", exit="gas-oven")
    assert pack.out_of_scope == {("fuel", "gas"): "gas-oven"}
    assert checks._ending({"fuel": "gas", "shock": "felt-one"}, "gas-oven", None).flags == ("electric-shock",)


def test_what_is_not_told_or_in_strange_words_is_not_known():
    walked = Checks(make_pack(), ANYWHERE).walk({"complaint": "sings", "heats": "sort-of"})
    assert {answer for question, answer in walked.trail if question != "danger"} == {CANT_TELL}


def test_the_model_is_the_one_of_pack_and_region(oven):
    assert oven.model is compile_model(electric_oven(), ANYWHERE)
