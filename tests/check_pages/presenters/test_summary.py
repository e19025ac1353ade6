"""What the person who comes is told: the check in words, what is off but not proved dead, and the way to replay it."""

from tests.household.checks_done import answers_of, at
from tests.pack_texts import fault_name, fault_trade_name
from triage.check_pages.presenters.summary import summary_of, summary_text
from triage.jobsheet.formats.text import short_text
from triage.knowledge.library import library

FAN_ELEMENT = fault_name("fan-element-open")
FAN_ELEMENT_OF_THE_TRADE = fault_trade_name("fan-element-open")

ELEMENT = answers_of("fan-element-open", "no-heat")


def test_the_file_holds_everything_a_repairer_needs(check_request):
    seen = check_request(at("/check/", {**ELEMENT, "supply-off": "yes"}))
    text = summary_text(seen)
    assert "Danger signs: none seen" in text
    assert "Supply: said to be off. Not proved dead." in text
    assert f"{FAN_ELEMENT} ({FAN_ELEMENT_OF_THE_TRADE})" in text
    assert "FOR THE REPAIRER" in text
    assert library().texts_for("gb-eng").faults["fan-element-open"].repairer in text
    assert "Bring: ring element to the rating plate" in text
    assert library().pack.version in text
    assert f"http://testserver{seen.links.step()}" in text


def test_the_weights_are_in_the_file_only(check_request):
    seen = check_request(at("/check/", ELEMENT))
    assert "(+" in summary_text(seen)
    short = short_text(summary_of(seen))
    assert "(+" not in short
    assert "REPAIRER" not in short
    assert "ohm" not in short
    assert "Supply: not said to be off." in short


def test_the_trouble_is_told_in_the_words_that_were_pressed(check_request):
    answers = {**ELEMENT, "heat-main": "no-heat", "lamp-state": "lamp-works"}
    assert "Trouble: The light and fan come on, but there is no heat" in summary_text(
        check_request(at("/check/", answers))
    )
    assert "Trouble: not said" in summary_text(check_request("/check/?smell-type=plastic-or-fishy"))


def test_danger_signs_and_the_kind_of_oven_are_told_apart(check_request):
    seen = check_request("/check/?region=ie&complaint=smell&smell-type=plastic-or-fishy&form=built-in")
    text = summary_text(seen)
    assert "Danger sign: Burning smell: switch off and leave off" in text
    assert "Advice given: leave it off until it has been checked" in text
    assert "KIND OF OVEN\n- Built in or free: Built into a cabinet or wall" in text


def test_before_the_end_it_holds_the_answers_so_far(check_request):
    text = summary_text(check_request("/check/?region=ie&complaint=no-heat"))
    assert text.startswith("OVEN FAULT CHECK\n\nANSWERS SO FAR\n- What is wrong: No heat at all\n")
