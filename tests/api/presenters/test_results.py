"""The endings tell what the pages tell: what to do first and never, whom to call; tasks are linked and never told."""

import json

from tests.api.presenters.steps import check_request
from tests.household.checks_done import answers_of
from tests.household.every_page import ELEMENT, OPEN, SEAL
from triage.api.presenters.results import emergency_json, out_of_scope_json, result_json
from triage.check_pages.presenters.emergency import emergency_page
from triage.check_pages.presenters.result import result_page
from triage.jobsheet.sentences import sentence
from triage.knowledge.library import library


def test_danger_is_told_in_full():
    danger = check_request({"complaint": "smell", "smell-type": "plastic-or-fishy"})
    result, page = emergency_json(danger, danger.step), emergency_page(danger, danger.step)
    assert result["band"] == "make-safe"
    assert [line["text"] for line in result["steps"]] == [line.text for line in page.steps]
    assert result["do_not"] == page.prohibitions
    assert [number["number"] for number in result["phone_numbers"]] == [number.number for number in page.phone_numbers]
    assert result["flags"][0]["flag"] == danger.step.flags[0].id
    assert [cause["fault"] for cause in result["causes"]] == [cause.fault for cause in danger.step.verdict.causes]


def test_people_who_have_to_leave_are_told_nothing_else():
    gas = check_request({"complaint": "smell", "smell-type": "gas"})
    result = emergency_json(gas, gas.step)
    assert result["evacuate"]
    assert (result["causes"], result["follow_up"], result["summary"], result["local_rules"]) == ([], None, "", "")


def test_an_advice_has_band_causes_and_tasks_with_their_ids():
    seal = check_request(SEAL)
    result, page = result_json(seal, seal.step), result_page(seal, seal.step)
    assert result["band"] == page.band
    assert result["causes"][0]["fault"] == seal.step.verdict.causes[0].fault
    assert result["causes"][0]["probability_text"] == sentence("chance", cause=page.causes[0])
    assert [task["task"] for task in result["tasks"]] == [task.id for task in seal.step.tasks]
    assert result["tasks"][0]["href"] == f"http://testserver{page.tasks[0].href}"


def test_the_sentence_that_keeps_the_oven_off_is_never_lost():
    caution = check_request(answers_of("hinge-worn", "door", door_fit="snaps-or-drops"))
    result = result_json(caution, caution.step)
    assert result["leave_off"]
    assert [flag["flag"] for flag in result["flags"]] == [flag.id for flag in caution.step.cautions]
    assert len(result["cautions"]) == len(result["flags"]) == 1


def test_no_step_of_a_task_is_told_even_with_its_gates_open():
    opened = check_request(OPEN)
    result = json.dumps(result_json(opened, opened.step), ensure_ascii=False)
    for task in opened.step.tasks:
        steps = opened.texts.tasks[task.id].steps
        assert steps
        assert not [line for line in steps if line in result]


def test_nothing_for_the_repairer_alone_is_told():
    advice = check_request(ELEMENT)
    result = json.dumps(result_json(advice, advice.step), ensure_ascii=False)
    secrets = [advice.texts.faults[fault].repairer for fault in library().pack.faults]
    assert not [text for text in secrets if text and text in result]


def test_the_way_out_for_gas_forbids_switches():
    out = check_request()
    gas, microwave = out_of_scope_json(out, "gas-smell"), out_of_scope_json(out, "microwave")
    assert (gas["no_switches"], microwave["no_switches"]) == (True, False)
    assert gas["phone_numbers"][0]["number"] == out.region.gas
    assert microwave["heading"]
