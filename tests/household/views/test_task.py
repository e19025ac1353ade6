"""Steps are on the page only when the task is offered and its gates are met; the cautions stand before the first."""

import pytest

from tests.household.checks_done import address, answers_of, at, links_of, open_page
from triage.knowledge.library import library

SEAL = answers_of("door-seal-worn", "door")


def test_the_gates_lead_to_the_steps_one_tap_each(client):
    page = open_page(client, at("/check/task/hook-seal-back/", SEAL))
    assert page.select("ol.steps") == []
    for _ in range(2):
        yes = [a for gate in page.select("li.gate") for a in gate.select("a")[:1] if "aria-current" not in a.attributes]
        page = open_page(client, yes[0].attributes["href"])
    text = page.one("main").text
    assert page.select("ol.steps")
    assert text.index("WARNING") < text.index("What to do")
    assert links_of(page)["That fixed it"].startswith("/check/?")


def test_a_gate_answered_no_says_what_to_do_first(client):
    page = open_page(client, at("/check/task/hook-seal-back/", {**SEAL, "cold": "no"}))
    assert page.select("ol.steps") == []
    assert library().texts_for("gb-eng").gates["cold"].if_not in page.one("main").text
    assert page.one('a[aria-current="true"]').text == "No"


@pytest.mark.parametrize("task", library().pack.tasks)
def test_no_address_alone_shows_the_steps_of_a_task(client, task):
    gates = dict.fromkeys(("cold", "supply-off", "plug-or-breaker-off", "oven-apart"), "yes")
    for answers in (
        {},
        {"complaint": "no-heat", "danger": "none"},
        {"smell-type": "gas"},
        {"trip-reset": "tripped-again"},
    ):
        page = open_page(client, at(f"/check/task/{task}/", {**answers, **gates}))
        steps = library().texts_for("gb-eng").tasks[task].steps
        assert page.select("ol.steps") == []
        assert not any(step in page.one("main").text for step in steps)
        assert page.one('[role="status"].note').text.startswith("Not now.")


def test_back_keeps_every_answer(client):
    page = open_page(client, at("/check/task/hook-seal-back/", {**SEAL, "cold": "yes"}))
    assert links_of(page)["Back to the advice"] == at("/check/", {**SEAL, "cold": "yes"})


def test_a_task_nobody_knows_is_not_there(client):
    assert client.get(address("/check/task/take-the-back-off/")).status_code == 404
