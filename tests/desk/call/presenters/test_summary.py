"""The call in plain sentences: what was told, what was said, and the link."""

from tests.household.checks_done import answers_of
from tests.pack_texts import fault_name
from triage.desk.call.presenters.summary import summary_of

FAN_ELEMENT = fault_name("fan-element-open")


def told(opened):
    return summary_of(opened, opened.check_request.check.belief)


def test_an_empty_call_says_so(call):
    assert told(call()).startswith("Electric oven: nothing recorded yet.")


def test_a_whole_check(call):
    answers = answers_of("fan-element-open", "no-heat")
    text = told(call("&".join(f"{n}={a}" for n, a in answers.items()), call_board="no", call_alone="alone"))
    assert "reported problem: No heat at all." in text
    assert "Danger signs were read out: none reported." in text
    assert "Advice: This is a job for an appliance engineer." in text
    assert f"Likeliest: {FAN_ELEMENT}" in text
    assert "The caller: alone, fuse box not safe." in text
    assert text.endswith("function-pattern=only-grill-works") or "/check/?region=gb-eng" in text


def test_danger_is_told_as_danger_and_nothing_as_proved(call):
    text = told(call("smell-type=plastic-or-fishy"))
    assert "DANGER reported, safety instructions given: Burning smell: switch off and leave off." in text
    assert "dead" not in text


def test_what_could_not_be_told_is_no_news(call):
    assert "I can’t tell" not in told(call("complaint=no-heat&danger=none&lamp-state=cant-tell"))


def test_another_appliance(call):
    text = told(call("complaint=will-not-light&danger=none&oven-fuel=gas"))
    assert "Not for this check: This check is only for electric ovens." in text
    assert "Likeliest" not in text
