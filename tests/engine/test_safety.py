"""Rules that outrank any probability: red flags in order, tasks that are safe whatever is still plausible."""

from dataclasses import replace

import pytest
from hypothesis import given, strategies

from tests.builders import ANYWHERE, electric_oven, make_pack
from tests.engine.trails import fitting_answers, some
from triage.engine.belief import infer_belief
from triage.engine.model import compile_model
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN, Region
from triage.engine.safety import ends_check, gate_answers, is_open, offered_tasks, raised_flags

SMALL, OVEN = make_pack(), electric_oven()
SOUND = {SCREEN: NONE_OF_THESE, "heats": "normal", "sparks": "no-sparks"}


def tasks_after(answers, pack=SMALL, region=ANYWHERE):
    return [task.id for task in offered_tasks(region, infer_belief(compile_model(pack, region), answers), answers)]


def with_task(name, **changes):
    return make_pack(tasks={**SMALL.tasks, name: replace(SMALL.tasks[name], **changes)})


def test_red_flags_are_raised_the_first_to_act_on_first():
    answers = {"pane": "loose", "sparks": "bright-spot", "shock": "felt-one", "heats": "less"}
    assert [flag.id for flag in raised_flags(SMALL, answers)] == ["electric-shock", "arc-burning", "loose-pane"]


def test_harmless_answers_and_the_danger_page_raise_nothing():
    assert raised_flags(SMALL, {**SOUND, "shock": CANT_TELL, "pane": "firm"}) == ()


@pytest.mark.parametrize(
    ("answers", "ends"),
    [
        ({}, False),
        ({"pane": "loose"}, False),
        ({"pane": "loose", "sparks": "one-flash"}, False),
        ({"pane": "loose", "shock": "felt-one"}, True),
    ],
)
def test_one_flag_that_ends_the_check_is_enough_and_cautions_are_not(answers, ends):
    assert ends_check(raised_flags(SMALL, answers)) is ends


def test_what_cures_most_for_the_least_time_comes_first():
    assert tasks_after(SOUND) == ["change-lamp", "set-clock", "heat-it"]
    slow = with_task("change-lamp", minutes=500.0)
    assert tasks_after(SOUND, slow) == ["set-clock", "heat-it", "change-lamp"]


def test_what_only_finds_something_out_counts_for_less_than_what_cures_it():
    found_out = with_task("heat-it", minutes=20.0)
    cured = with_task("heat-it", minutes=20.0, cures=SMALL.tasks["heat-it"].helps)
    assert tasks_after(SOUND, found_out)[0] == "change-lamp"
    assert tasks_after(SOUND, cured)[0] == "heat-it"


@pytest.mark.parametrize("who", ["instructed", "skilled"])
def test_work_of_an_instructed_or_skilled_person_is_never_offered(who):
    assert "heat-it" not in tasks_after(SOUND, with_task("heat-it", competence=who))


def test_a_task_is_not_offered_while_a_fault_it_is_unsafe_with_is_plausible():
    assert "change-lamp" in tasks_after(SOUND)
    assert "change-lamp" not in tasks_after({})
    unsafe = with_task("heat-it", unsafe_with=frozenset({"other"}))
    assert "heat-it" not in tasks_after(SOUND, unsafe)


def test_a_task_that_helps_with_nothing_likely_is_not_offered():
    assert "heat-it" not in tasks_after(SOUND, with_task("heat-it", helps=frozenset({"element-arcing"})))
    assert "heat-it" not in tasks_after(SOUND, with_task("heat-it", helps=frozenset({"board-dead"})))


def test_a_region_can_take_a_task_away():
    strict = Region("strict", removed_tasks=frozenset({"change-lamp"}))
    assert tasks_after(SOUND, region=strict) == ["set-clock", "heat-it"]


def test_a_task_for_another_kind_of_oven_is_not_offered():
    assert "set-clock" not in tasks_after({**SOUND, "control": "mechanical"})


def test_a_caution_forbids_its_own_tasks_and_everything_that_heats():
    assert tasks_after({**SOUND, "pane": "loose"}) == ["set-clock"]


def test_a_task_that_answers_a_caution_is_offered_only_after_one_of_its_own():
    pack = with_task("set-clock", only_after=frozenset({"loose-pane", "arc-burning"}))
    assert "set-clock" not in tasks_after(SOUND, pack)
    assert "set-clock" in tasks_after({**SOUND, "pane": "loose"}, pack)


def test_nothing_is_offered_once_a_flag_ended_the_check():
    assert tasks_after({**SOUND, "shock": "felt-one"}) == []


@pytest.mark.parametrize("pack", [SMALL, OVEN], ids=["small", "electric oven"])
@some
@given(wishes=strategies.data())
def test_no_task_offered_is_unsafe_with_a_fault_still_plausible(pack, wishes):
    answers = wishes.draw(fitting_answers(pack))
    belief = infer_belief(compile_model(pack, ANYWHERE), answers)
    plausible = {fault for fault, chance in belief.faults.items() if chance >= pack.limits.plausible_probability}
    for task in offered_tasks(ANYWHERE, belief, answers):
        assert task.competence == "ordinary"
        assert not task.unsafe_with & plausible
        assert not task.not_after & {flag.id for flag in raised_flags(pack, answers)}


@pytest.mark.parametrize("pack", [SMALL, OVEN], ids=["small", "electric oven"])
@some
@given(wishes=strategies.data())
def test_a_stricter_region_never_adds_a_task(pack, wishes):
    answers = wishes.draw(fitting_answers(pack))
    removed = wishes.draw(strategies.frozensets(strategies.sampled_from(list(pack.tasks))))
    belief = infer_belief(compile_model(pack, ANYWHERE), answers)
    usual = offered_tasks(ANYWHERE, belief, answers)
    strict = offered_tasks(Region("strict", removed_tasks=removed), belief, answers)
    assert list(strict) == [task for task in usual if task.id not in removed]


def test_a_gate_is_open_only_when_all_of_it_was_answered_yes():
    task = SMALL.tasks["change-lamp"]
    assert gate_answers(task, {"cold": "yes"}) == {"cold": "yes", "supply-off": CANT_TELL}
    assert is_open(task, {"cold": "yes", "supply-off": "yes"})
    for answer in ("no", "unsure", CANT_TELL):
        assert not is_open(task, {"cold": "yes", "supply-off": answer})
    assert not is_open(task, {})


def test_a_task_without_gates_is_open():
    assert is_open(SMALL.tasks["set-clock"], {})
