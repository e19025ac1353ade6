"""A task opens only when it is offered on these very answers and every gate was answered yes."""

from dataclasses import replace

import pytest

from tests.check_pages.fragments import words_of
from tests.household.checks_done import answers_of, at
from triage.check_pages.presenters.task import gate_state, is_offered, result_of, task_page
from triage.engine import Result
from triage.knowledge.library import library

SEAL = answers_of("door-seal-worn", "door")
OPEN = {"cold": "yes", "supply-off": "yes"}
PACK = library().pack


def page(check_request, task, answers, region="gb-eng"):
    return task_page(check_request(at(f"/check/task/{task}/", answers, region)), task)


def bare(found):
    return (found.cautions, found.steps, found.stop_if, found.after_choices) == ([], [], [], [])


def test_it_is_open_when_offered_and_every_gate_is_yes(check_request):
    found = page(check_request, "hook-seal-back", {**SEAL, **OPEN})
    assert found.open
    assert [gate.state for gate in found.gates] == ["yes", "yes"]
    assert found.cautions
    assert found.steps
    assert [choice.label for choice in found.after_choices] == ["That fixed it", "No change"]
    assert "did-hook-seal-back=fixed" in found.after_choices[0].href


@pytest.mark.parametrize("cold", ["", "no", "unsure", "cant-tell"])
@pytest.mark.parametrize("off", ["", "no", "unsure", "cant-tell", "yes"])
def test_any_gate_that_is_not_yes_keeps_it_shut(check_request, cold, off):
    given = {name: answer for name, answer in (("cold", cold), ("supply-off", off)) if answer}
    found = page(check_request, "hook-seal-back", {**SEAL, **given})
    assert not found.open
    assert bare(found)
    assert found.closed
    assert [gate.if_not != "" for gate in found.gates] == [True, True]


def test_the_gate_on_the_supply_says_how_to_cut_it_and_the_gate_on_heat_how_long_to_wait(check_request):
    known = library().texts_for("gb-eng").isolation
    cold, off = page(check_request, "hook-seal-back", SEAL).gates
    assert cold.how is None
    assert cold.waits == list(known.cooling.values())
    assert off.waits == []
    assert off.how is not None
    assert off.yes_href == at("/check/task/hook-seal-back/", {**SEAL, "supply-off": "yes"})


def test_only_where_hands_get_near_lamp_glass_or_seal_must_it_be_stone_cold(check_request):
    known = library().texts_for("gb-eng").isolation
    cold = page(check_request, "power-rest", answers_of("board-or-display-dead", "nothing-on")).gates[0]
    assert cold.waits == [line for after, line in known.cooling.items() if after != "lamp-glass-seal"]


def test_where_the_power_was_cut_the_open_task_says_how_it_comes_back(check_request):
    back_on = list(library().texts_for("gb-eng").isolation.back_on)
    assert page(check_request, "hook-seal-back", {**SEAL, **OPEN}).back_on == back_on
    assert page(check_request, "hook-seal-back", SEAL).back_on == []


@pytest.mark.parametrize("task", PACK.tasks)
@pytest.mark.parametrize(
    "answers",
    [{}, {"complaint": "no-heat"}, {"smell-type": "gas"}, {"danger": "none", "glass-state": "glass-broken"}],
    ids=["nothing said", "not asked yet", "gas", "broken glass"],
)
def test_a_forged_address_never_opens_it(check_request, task, answers):
    gates = dict.fromkeys(PACK.tasks[task].gates, "yes")
    found = page(check_request, task, {**answers, **gates})
    assert not found.open
    assert bare(found)
    assert found.gates == []


@pytest.mark.parametrize("region", ["gb-eng", "iec", "au"])
def test_every_task_is_open_exactly_when_the_engine_offers_it(check_request, region):
    answers = {**answers_of("lamp-failed", "lamp", region), **dict.fromkeys(("cold", "supply-off"), "yes")}
    answers["plug-or-breaker-off"] = "yes"
    step = check_request(at("/check/", answers, region)).step
    assert isinstance(step, Result)
    offered = {task.id for task in step.tasks}
    opened = {task for task in PACK.tasks if page(check_request, task, answers, region).open}
    assert opened == {task for task in offered if set(PACK.tasks[task].gates) <= set(answers)}


def test_a_task_that_the_rules_there_take_away_says_so(check_request):
    found = page(check_request, "change-lamp", answers_of("lamp-failed", "lamp", "au"), "au")
    assert not found.open
    assert found.closed == "removed"
    told = words_of("removed", page=found)
    assert "This is not offered here. In Australia it is left to people with the right licence." in told


def test_a_task_whose_outcome_is_a_look_asks_what_was_seen(check_request):
    found = page(check_request, "paper-strip", {**SEAL, **OPEN})
    assert found.open
    assert found.after_question == library().texts_for("gb-eng").questions["paper-strip-test"].ask
    assert found.after_choices[-1].label == "I can’t tell"


def test_what_came_of_it_is_followed_up(check_request):
    seen = check_request(at("/check/", {**SEAL, "did-hook-seal-back": "not-fixed"}))
    task = PACK.tasks["hook-seal-back"]
    assert result_of(seen, task) == library().texts_for("gb-eng").tasks["hook-seal-back"].not_fixed
    assert result_of(check_request(at("/check/", SEAL)), task) == ""


def test_only_advice_offers_tasks(check_request):
    assert is_offered(check_request(at("/check/", SEAL)), PACK.tasks["hook-seal-back"])
    assert not is_offered(check_request("/check/?complaint=door"), PACK.tasks["hook-seal-back"])


@pytest.mark.parametrize(
    ("answer", "state"),
    [("yes", "yes"), ("no", "no"), ("unsure", "unsure"), ("cant-tell", "unsure"), ("", ""), ("perhaps", "")],
)
def test_not_sure_is_never_yes(answer, state):
    assert gate_state(answer) == state


def test_a_task_named_beside_a_question_is_offered_there_and_no_other_is(check_request):
    seen = check_request("/check/?region=gb-eng&complaint=no-heat&danger=none")
    seen.check.__dict__["step"] = replace(seen.step, better_test=PACK.tasks["meter-test"])
    assert is_offered(seen, PACK.tasks["meter-test"])
    assert not is_offered(seen, PACK.tasks["thermometer-test"])
    assert task_page(seen, "meter-test").reading is not None
    assert task_page(seen, "time-the-preheat").reading is None
