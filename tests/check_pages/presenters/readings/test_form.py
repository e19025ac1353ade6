"""The form of a reading: what it answers, what is said about what cannot be used, and what was typed staying there."""

import re
from urllib.parse import parse_qsl

import pytest

from tests.check_pages.fragments import lines_of, words_of
from tests.household.checks_done import answers_of, at
from triage.check_pages.presenters.readings.form import measured_by, reading_form
from triage.check_pages.presenters.readings.form_input import error
from triage.engine.readings import encoding
from triage.engine.readings.encoding import MAX_ITEMS
from triage.knowledge.library import library
from triage.query import MAX_VALUE_LENGTH

PACK = library().pack
SENT = {"read-form": "1"}
COUNTED = {"read-flashes": "35", "read-seconds": "60", "read-impulses": "1000"}


def form(check_request, task, typed, region="gb-eng", **answers):
    seen = check_request(at("/check/", {**answers, **SENT, **typed}, region))
    return reading_form(seen, measured_by(PACK, PACK.tasks[task]), f"/check/task/{task}/")


def fields(found):
    return {field.name: field for group in found.groups for field in group.fields}


def used(found):
    """The answers the bar takes into the check."""
    return dict(parse_qsl(found.result.continue_href.partition("?")[2]))


def wanting(found):
    """What is said about figures that cannot be used."""
    return lines_of("reading_result", form=found, result=found.result) if found.result is None else []


def test_a_form_that_was_not_sent_says_nothing(check_request):
    seen = check_request("/check/?complaint=no-heat")
    found = reading_form(seen, measured_by(PACK, PACK.tasks["meter-test"]), "/check/task/meter-test/")
    assert (wanting(found), found.result) == ([], None)


def test_an_empty_form_says_that_nothing_is_filled_in(check_request):
    assert wanting(form(check_request, "meter-test", {})) == ["Nothing is filled in yet."]


def test_the_reading_is_written_into_the_trail_as_typed_and_what_was_typed_stays(check_request):
    found = form(check_request, "meter-test", {**COUNTED, "read-plate": "2200"}, complaint="no-heat")
    assert used(found)["meter-power"] == "f35~s60~k1000~p2200"
    assert used(found)["complaint"] == "no-heat"
    assert fields(found)["read-flashes"].value == "35"
    assert ("complaint", "no-heat") in found.hidden


def test_the_grill_may_be_what_was_measured(check_request):
    kind = {"complaint": "no-heat", "grill-control": "board"}
    found = form(check_request, "meter-test", {**COUNTED, "read-for": "meter-grill"}, **kind)
    assert "meter-grill" in used(found)
    assert "meter-power" not in used(found)
    assert [value for value, _ in fields(found)["read-for"].choices] == ["meter-power", "meter-grill"]


def test_one_set_of_temperatures_answers_every_question_they_can(check_request):
    typed = {"read-set": "180", "read-time-1": "30", "read-shown-1": "176"}
    found = form(check_request, "thermometer-test", typed, complaint="too-hot", **{"heat-main": "bit-hot"})
    names = ("thermometer-mean", "thermometer-swing", "thermometer-duty")
    assert {used(found)[name] for name in names} == {"c180~r30-176"}


def test_what_does_not_exist_on_this_oven_is_not_answered(check_request):
    typed = {"read-set": "180", "read-time-1": "30", "read-shown-1": "176"}
    found = form(check_request, "thermometer-test", typed)
    assert found.result.headline.startswith("Mean 176 °C")
    assert found.result.continue_href == ""


def test_readings_that_only_climb_raise_the_alarm_whatever_oven_it_is(check_request):
    rows = [(30, 220), (35, 250), (40, 280)]
    typed = {"read-set": "180"}
    for number, (time, shown) in enumerate(rows, 1):
        typed |= {f"read-time-{number}": str(time), f"read-shown-{number}": str(shown)}
    found = form(check_request, "thermometer-test", typed)
    assert found.result.alarm
    assert "thermometer-swing" in used(found)


BAD = [
    ("meter-test", {**COUNTED, "read-seconds": "0"}, "This cannot be less than 1. Check the number and its unit."),
    ("meter-test", {**COUNTED, "read-seconds": "-5"}, "This cannot be less than 1. Check the number and its unit."),
    ("meter-test", {**COUNTED, "read-impulses": "0"}, "This cannot be less than 10. Check the number and its unit."),
    ("meter-test", {**COUNTED, "read-plate": "20"}, "This cannot be less than 200. Check the number and its unit."),
    ("meter-test", {**COUNTED, "read-plate": "20000"}, "This cannot be more than 8000. Check the number and its unit."),
    (
        "meter-test",
        {**COUNTED, "read-flashes": "3,5"},
        "This is counted in whole numbers. Write it without a decimal part.",
    ),
    ("meter-test", {**COUNTED, "read-plate": "1,200"}, "“1,200” can be read in two ways."),
    ("meter-test", {**COUNTED, "read-flashes": "many"}, "“many” is not a number we can read."),
    (
        "meter-test",
        {"read-flashes": "5", "read-impulses": "1000"},
        "This is still missing: Time from the first to the last.",
    ),
    ("meter-test", {**COUNTED, "read-before": "1", "read-after": "2"}, "Two ways of reading the meter are filled in."),
    (
        "meter-test",
        {"read-before": "2", "read-after": "1", "read-minutes": "5"},
        "The second figure is lower than the first.",
    ),
    ("meter-test", {"read-taps": "0 1 2", "read-impulses": "1000"}, "There are too few readings to tell anything."),
    (
        "meter-test",
        {"read-taps": "0 1 1 2 3 4", "read-impulses": "1000"},
        "Each time must be later than the one before it.",
    ),
    ("meter-test", {"read-taps": "0 one"}, "“one” is not a number we can read."),
    ("meter-test", {"read-taps": " ".join(str(n) for n in range(61))}, "There are more readings than can be used."),
    ("thermometer-test", {"read-set": "900"}, "This cannot be more than 300. Check the number and its unit."),
    ("thermometer-test", {"read-set": "180"}, "This is still missing: Minutes of reading 1."),
    ("thermometer-test", {"read-set": "180", "read-time-1": "30"}, "This is still missing: Temperature of reading"),
    (
        "thermometer-test",
        {"read-set": "180", "read-time-1": "5", "read-shown-1": "900"},
        "This cannot be more than 500.",
    ),
    ("time-the-fan", {"read-heard": "30", "read-stopped": "20"}, "The second figure is lower than the first."),
    ("time-the-preheat", {"read-minutes": "0", "read-set": "200"}, "This cannot be less than 0.5."),
    ("time-the-preheat", {"read-minutes": "-12,5", "read-set": "200"}, "This cannot be less than 0.5."),
    ("time-the-fan", {"read-heard": "-1"}, "This cannot be less than 0. Check the number and its unit."),
    (
        "thermometer-test",
        {"read-set": "180", "read-time-1": "-5", "read-shown-1": "170"},
        "This cannot be less than 0. Check the number and its unit.",
    ),
    (
        "meter-test",
        {"read-before": "1000,1", "read-after": "1000,5", "read-minutes": "0"},
        "This cannot be less than 1. Check the number and its unit.",
    ),
    (
        "meter-test",
        {**COUNTED, "read-whole-plate": "20"},
        "This cannot be less than 500. Check the number and its unit.",
    ),
    (
        "meter-test",
        {"read-taps": " ".join(["30"] * MAX_ITEMS), "read-impulses": "1000"},
        "Each time must be later than the one before it.",
    ),
]


@pytest.mark.parametrize(("task", "typed", "sentence"), BAD)
def test_what_cannot_be_used_gets_a_sentence_and_stays(check_request, task, typed, sentence):
    found = form(check_request, task, typed)
    assert found.result is None
    assert any(sentence in line for line in wanting(found)), wanting(found)
    for name, text in typed.items():
        assert fields(found)[name].value == text


def many_rows(number):
    """As long as rows can be when they are typed to a tenth."""
    rows = {f"read-time-{n}": f"{100 + n / 10 + 6 * n:.1f}" for n in range(1, number + 1)}
    return rows | {f"read-shown-{n}": f"{356.2 - n % 3:.1f}" for n in range(1, number + 1)}


def test_sixty_readings_are_all_used(check_request):
    typed = {"read-set": "160.5", "read-tolerance": "10.5", "read-boiling": "100.5", **many_rows(MAX_ITEMS)}
    found = form(check_request, "thermometer-test", typed, complaint="too-hot", **{"heat-main": "bit-hot"})
    text = used(found)["thermometer-mean"]
    assert text.count("_") == MAX_ITEMS - 1
    assert len(text) <= encoding.MAX_TEXT_LENGTH == MAX_VALUE_LENGTH
    assert f"read-time-{MAX_ITEMS + 1}" not in fields(found)


def test_one_reading_more_is_refused_in_words_and_every_row_stays(check_request):
    typed = {"read-set": "160", **many_rows(MAX_ITEMS + 1)}
    found = form(check_request, "thermometer-test", typed)
    assert wanting(found) == ["There are more readings than can be used. Keep up to 60 of them."]
    assert {name: fields(found)[name].value for name in typed} == typed


def test_as_many_readings_as_there_are_rows_at_one_instant_are_refused_and_stay(check_request):
    typed = {"read-set": "180"}
    for number in range(1, MAX_ITEMS + 1):
        typed |= {f"read-time-{number}": "30", f"read-shown-{number}": "180"}
    found = form(check_request, "thermometer-test", typed)
    assert found.result is None
    assert "Each time must be later than the one before it." in wanting(found)[0]
    assert {name: fields(found)[name].value for name in typed} == typed


def test_every_reason_of_the_engine_has_a_sentence_of_its_own():
    reasons = re.search(r"Reasons: ([^.]*)\.", encoding.InvalidReading.__doc__)[1].replace(",", " ").split()
    assert len(reasons) == 13
    told = {
        reason: words_of("reading_error", error=error(reason, "Time", "12 apples", "1", "240")) for reason in reasons
    }
    assert len(set(told.values())) == len(reasons)
    assert "“12 apples”" in told["not-a-number"]
    assert "240" in told["too-large"]
    assert told["missing"] == "This is still missing: Time."
    later = words_of("reading_error", error=error("out-of-tune"))
    assert later.startswith("These figures cannot be used together.")


def test_commas_are_read_like_points(check_request):
    found = form(check_request, "time-the-preheat", {"read-minutes": "12,5", "read-set": "200"})
    assert used(found)["preheat-time"] == "m12.5~c200"
    assert fields(found)["read-minutes"].value == "12,5"


@pytest.mark.parametrize(
    ("task", "typed", "same"),
    [
        ("meter-test", {**COUNTED, "read-seconds": "60,5"}, {**COUNTED, "read-seconds": "60.5"}),
        (
            "meter-test",
            {"read-before": "1000,10", "read-after": "1000,47", "read-minutes": "10,5"},
            {"read-before": "1000.10", "read-after": "1000.47", "read-minutes": "10.5"},
        ),
        (
            "thermometer-test",
            {"read-set": "180", "read-time-1": "30,5", "read-shown-1": "176,5"},
            {"read-set": "180", "read-time-1": "30.5", "read-shown-1": "176.5"},
        ),
    ],
)
def test_with_a_comma_the_same_comes_of_it_and_the_comma_stays(check_request, task, typed, same):
    by_comma, by_point = form(check_request, task, typed), form(check_request, task, same)
    assert by_comma.result.headline == by_point.result.headline
    assert wanting(by_comma) == []
    assert {name: fields(by_comma)[name].value for name in typed} == typed


def test_fahrenheit_is_typed_and_shown_where_people_use_it(check_request):
    """350 °F is 176.7 °C: (350 - 32) / 1.8."""
    typed = {"read-set": "350", "read-time-1": "30", "read-shown-1": "350"}
    answers = {"complaint": "too-hot", "heat-main": "bit-hot"}
    found = form(check_request, "thermometer-test", typed, "us", **answers)
    assert used(found)["thermometer-mean"] == "c176.7~r30-176.7"
    assert fields(found)["read-set"].unit == "°F"
    lines = lines_of("reading_result", form=found, result=found.result)
    assert any("°F" in line and "°C" not in line for line in lines)
    assert wanting(form(check_request, "thermometer-test", {"read-set": "900"}, "us")) == [
        "Heat that was set: This cannot be more than 572. Check the number and its unit."
    ]


def test_a_display_voltage_is_taken_against_the_voltage_of_the_place(check_request):
    typed = {**COUNTED, "read-plate": "2200", "read-supply-volts": "238"}
    assert used(form(check_request, "meter-test", typed, "us"))["meter-power"].endswith("r240~v238")
    assert used(form(check_request, "meter-test", typed, "de"))["meter-power"].endswith("r230~v238")


def test_a_task_whose_outcome_is_in_words_has_no_form():
    assert measured_by(PACK, PACK.tasks["set-clock"]) == []


def test_a_check_that_offers_the_meter_shows_its_form_after_cautions_and_steps(client):
    answers = answers_of("fan-element-open", "no-heat")
    page = client.get(at("/check/task/meter-test/", answers)).content.decode()
    order = [page.index(mark) for mark in ("signal--", 'class="steps"', "data-reading", 'id="outcome"')]
    assert order == sorted(order)
