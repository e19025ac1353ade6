"""The result says how serious it is, what to do now, and stays strict when the likely causes differ."""

from dataclasses import replace

import pytest

from tests.household.checks_done import answers_of, at
from tests.pack_texts import fault_name
from triage.check_pages.presenters.result import Action, is_solved, result_page
from triage.engine import Band, Result
from triage.jobsheet.sentences import sentence
from triage.knowledge.library import library

FAN_ELEMENT = fault_name("fan-element-open")

TEXTS = library().texts_for("gb-eng")


def advice(check_request, fault, complaint, **more):
    seen = check_request(at("/check/", answers_of(fault, complaint, **more)))
    assert isinstance(seen.step, Result)
    return result_page(seen, seen.step)


def heading(page):
    return sentence("result_heading", page=page)


def actions(page):
    return [sentence("action", action=action) for action in page.actions]


def test_a_failed_element_is_a_job_for_a_technician(check_request):
    page = advice(check_request, "fan-element-open", "no-heat")
    assert (page.band, heading(page)) == ("qualified", "This is a job for an appliance engineer")
    assert sentence("result_meaning", page=page) == f"Most likely: {FAN_ELEMENT}."
    assert actions(page)[0] == TEXTS.faults["fan-element-open"].now
    assert actions(page)[-1] == "Book an appliance engineer. Read out or send the summary below."
    assert page.part == "ring"
    assert page.jobs[0].who == "an appliance engineer"
    assert page.preparation


def test_a_clock_that_is_not_set_is_put_right_before_anything_is_said_of_use(check_request):
    page = advice(check_request, "programmer-not-set", "nothing-on")
    assert (page.band, heading(page)) == ("self-check", "You may be able to put this right")
    assert page.tasks[0].title == "Set the clock and choose manual"
    assert actions(page)[0].startswith("Do the checks below")
    assert actions(page)[1] == TEXTS.faults["programmer-not-set"].now


def test_a_fan_that_runs_on_is_how_a_sound_oven_behaves(check_request):
    page = advice(check_request, "normal-fan-run-on", "fan-after")
    assert (page.band, heading(page)) == ("normal", "It seems to work as it should")
    assert not page.leave_off
    assert page.jobs == []


def test_what_was_done_with_no_change_is_said_and_not_offered_as_new(check_request):
    page = advice(check_request, "programmer-faulty", "nothing-on", did_set_clock="not-fixed")
    assert actions(page)[0] == TEXTS.tasks["set-clock"].not_fixed
    assert all(task.done == "no-change" for task in page.tasks if task.title == "Set the clock and choose manual")


def test_a_task_that_put_it_right_ends_it_and_says_what_to_do_if_it_comes_back(check_request):
    page = advice(check_request, "programmer-not-set", "nothing-on", did_set_clock="fixed")
    assert page.solved
    assert heading(page) == "That put it right"
    assert sentence("result_meaning", page=page) == TEXTS.tasks["set-clock"].fixed
    assert (page.actions, page.causes, page.tasks, page.jobs, page.summary) == ([], [], [], [], None)


@pytest.mark.parametrize("band", [Band.QUALIFIED, Band.MAKE_SAFE])
def test_nothing_counts_as_put_right_while_it_is_serious(check_request, band):
    seen = check_request(at("/check/", {**answers_of("programmer-not-set", "nothing-on"), "did-set-clock": "fixed"}))
    step = replace(seen.step, verdict=replace(seen.step.verdict, band=band))
    assert not is_solved(seen, step)
    assert result_page(seen, step).leave_off or band is Band.QUALIFIED


def test_a_likely_enough_cause_that_must_stay_off_decides(check_request):
    seen = check_request(at("/check/", answers_of("programmer-not-set", "nothing-on")))
    first = seen.step.verdict.causes[0]
    grave = replace(first, fault="fan-element-earth-leak", chance=0.3)
    step = replace(seen.step, verdict=replace(seen.step.verdict, causes=(first, grave)))
    assert result_page(seen, step).leave_off_text == TEXTS.faults["fan-element-earth-leak"].now
    slight = replace(grave, chance=0.1)
    step = replace(seen.step, verdict=replace(seen.step.verdict, causes=(first, slight)))
    assert not result_page(seen, step).leave_off


def test_look_alikes_and_companions_are_named(check_request):
    seen = check_request(at("/check/", answers_of("fan-element-open", "no-heat")))
    verdict = replace(
        seen.step.verdict, alike=("fan-element-open", "thermostat-open"), also_check=("circ-fan-stopped",)
    )
    page = result_page(seen, replace(seen.step, verdict=verdict))
    alike = f"These cannot be told apart without opening the oven: {FAN_ELEMENT}; "
    assert sentence("indistinguishable", page=page).startswith(alike)
    also = "Worth a look at the same visit, as one often leads to the other: Oven fan stopped or slow."
    assert sentence("also_check", page=page) == also


def test_while_a_caution_stands_nothing_lets_the_oven_be_used(check_request):
    seen = check_request(at("/check/", answers_of("normal-fan-run-on", "fan-after")))
    caution = library().pack.red_flags["starts-alone"]
    page = result_page(seen, replace(seen.step, cautions=(caution,)))
    assert sentence("leave_off", page=page) == "Leave the oven off until it has been checked."
    assert Action("text", TEXTS.faults["normal-fan-run-on"].now) not in page.actions


def test_a_caution_stands_on_the_page_with_its_first_action(check_request):
    page = advice(check_request, "hinge-worn", "door", door_fit="snaps-or-drops")
    assert [note.heading for note in page.cautions] == ["Keep hands out of the hinges"]
    assert page.band in ("qualified", "make-safe")


def test_a_cause_is_named_as_sure_as_it_is(check_request):
    page = advice(check_request, "fan-element-open", "no-heat")
    unsure = sentence("result_meaning", page=replace(page, likely=False))
    assert unsure == f"Your answers fit more than one cause. The likeliest is: {FAN_ELEMENT}."


def test_nobody_on_the_telephone_is_sent_to_the_summary_below():
    booking = Action("book", "an electrician")
    assert sentence("action", action=booking, aloud=True) == "Book an electrician."
