"""Only numbers that a region may show are shown; otherwise a sentence says what to do."""

from triage.check_pages.presenters.numbers import calls_for, emergency_call, without_number
from triage.knowledge.library import library

ENGLAND, NETHERLANDS, GERMANY = (library().regions[name] for name in ("gb-eng", "nl", "de"))


def test_the_emergency_number_can_be_dialled():
    number = emergency_call(ENGLAND)
    assert (number.number, number.href, number.for_what) == ("999", "tel:999", "Fire, ambulance, police")


def test_numbers_come_in_the_order_wanted_each_once():
    assert [n.href for n in calls_for(ENGLAND, ["gas", "emergency", "gas", "network"])] == [
        "tel:0800111999",
        "tel:999",
    ]
    assert [n.href for n in calls_for(NETHERLANDS, ["gas", "network"])] == ["tel:08009009"]


def test_a_number_that_is_not_shown_leaves_its_sentence():
    assert calls_for(GERMANY, ["gas", "network"]) == []
    gas, network = without_number(GERMANY, ["gas", "network", "emergency", "gas"])
    assert gas == "Gas emergency line: " + GERMANY.gas_text
    assert network == "The electricity network company: The number is on your power bill."
    assert without_number(ENGLAND, ["gas", "emergency"]) == []
