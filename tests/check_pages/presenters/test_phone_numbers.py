"""Only numbers that a region may show are shown; otherwise a sentence says what to do."""

from dataclasses import replace

from triage.check_pages.presenters.phone_numbers import emergency_call, numbers_for, numbers_not_shown
from triage.jobsheet.sentences import sentence
from triage.knowledge.library import library

ENGLAND, NETHERLANDS, GERMANY = (library().regions[name] for name in ("gb-eng", "nl", "de"))


def test_the_emergency_number_can_be_dialled():
    number = emergency_call(ENGLAND)
    assert (number.number, number.href) == ("999", "tel:999")
    assert sentence("phone_number", number=number) == "Fire, ambulance, police"


def test_numbers_come_in_the_order_wanted_each_once():
    assert [n.href for n in numbers_for(ENGLAND, ["gas", "emergency", "gas", "network"])] == [
        "tel:0800111999",
        "tel:999",
    ]
    assert [n.href for n in numbers_for(NETHERLANDS, ["gas", "network"])] == ["tel:08009009"]


def test_a_number_that_is_not_shown_leaves_its_sentence():
    assert numbers_for(GERMANY, ["gas", "network"]) == []
    contacts = numbers_not_shown(GERMANY, ["gas", "network", "emergency", "gas"])
    gas, network = (sentence("other_contact", contact=contact) for contact in contacts)
    assert gas == "Gas emergency line: " + GERMANY.gas_text
    assert network == "The electricity network company: The number is on your power bill."
    assert list(numbers_not_shown(ENGLAND, ["gas", "emergency"])) == []


def test_each_number_says_what_it_is_for():
    gas, network = numbers_for(NETHERLANDS, ["gas"])[0], replace(emergency_call(ENGLAND), kind="network")
    assert sentence("phone_number", number=gas) == f"Gas emergency line. {NETHERLANDS.gas_text}"
    assert sentence("phone_number", number=network) == "Electricity network company"
