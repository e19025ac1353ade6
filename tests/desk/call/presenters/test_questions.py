"""What is said to find something out: the opening, the danger signs in rounds, and questions with their keys."""

import pytest

from triage.desk.call.presenters.page import call_page
from triage.desk.call.presenters.questions import OPTION_KEYS, board_prompt, danger_signs, opening, question
from triage.desk.call.speech import line_id
from triage.engine.pack import OPENING
from triage.knowledge.library import library

PACK = library().pack
MEMORY_FIRST = "Answer from memory, please. Do not switch anything on and do not touch it to find out."


def test_the_opening_is_the_callers_own_words(call):
    say = opening(call())
    assert say.text == "In your own words, what is the oven doing, or not doing?"
    assert {key.key for key in say.keys} == {"", "0"}


def test_the_danger_signs_are_read_round_by_round_before_none_is_recorded(call, reopen):
    opened = call("complaint=no-heat")
    for number in range(3):
        say = danger_signs(opened)
        assert say.kind == "danger"
        assert say.count == f"{number + 1} of 3"
        (turn,) = [line for line in say.lines if line.href]
        assert ("danger=none" in turn.href) is (number == 2)
        opened = reopen(turn.href)
    assert opened.check_request.answers["danger"] == "none"


def test_asked_for_again_the_signs_are_read_again_from_the_first(call, reopen):
    marks = ",".join(line_id(spoken.say) for spoken in library().texts_for("gb-eng").calls.rounds)
    opened = call("complaint=no-heat", call_read=marks, call_ask="danger")
    for number in range(3):
        page = call_page(opened)
        assert page.prompt.count == f"{number + 1} of 3"
        (turn,) = [line for line in page.prompt.lines if line.href]
        opened = reopen(turn.href)
    assert opened.check_request.answers["danger"] == "none"
    assert call_page(call("complaint=no-heat", call_ask="danger-99")).prompt.count == "1 of 3"


def test_no_mark_of_somebody_elses_making_skips_a_round(call):
    last = line_id(library().texts_for("gb-eng").calls.rounds[2].say)
    (turn,) = [line for line in danger_signs(call(call_read=last)).lines if line.href]
    assert "danger=none" not in turn.href


def test_every_sign_of_the_danger_page_has_its_key_in_some_round(call):
    marks, offered = [], set()
    for spoken in library().texts_for("gb-eng").calls.rounds:
        offered |= {
            key.href.split("&call-")[0].rsplit("&", 1)[-1] for key in danger_signs(call(call_read=",".join(marks))).keys
        }
        marks.append(line_id(spoken.say))
    signs = {f"{o}={option}" for flag in PACK.red_flags.values() for o, option in flag.signs}
    assert offered >= signs


@pytest.mark.parametrize("name", [name for name in library().texts_for("gb-eng").questions if name != OPENING])
def test_every_answer_has_a_key_and_zero_is_cannot_tell(call, reopen, name):
    opened = call("complaint=no-heat&danger=none", call_board="yes")
    first = question(opened, name)
    for line in first.lines:
        assert first.keys == []
        opened = reopen(line.href)
        first = question(opened, name)
    keys = [key.key for key in question(opened, name).keys]
    assert keys == [*OPTION_KEYS[: len(PACK.observations[name].options)], "0"]
    assert question(opened, name).keys[-1].href.count("cant-tell") == 1


def test_what_needs_memory_only_says_so_first_and_once(call, reopen):
    say = question(call("complaint=no-heat&danger=none"), "heat-main")
    assert [line.text for line in say.lines] == [MEMORY_FIRST]
    after = reopen(say.lines[0].href)
    assert question(after, "onset").keys


def test_who_is_to_look_hears_first_how_to_look_safely(call):
    say = question(call("complaint=no-heat&danger=none"), "element-look")
    assert [line.text for line in say.lines] == [library().texts_for("gb-eng").questions["element-look"].look]
    assert say.keys == []


def test_who_is_not_with_the_oven_is_asked_from_memory(call):
    say = question(call("complaint=no-heat&danger=none", call_oven="no"), "element-look")
    assert say.lines[0].text.startswith("Please do not go and look.")


@pytest.mark.parametrize("name", ["trip-device", "hob-shared", "burn-marks", "meter-off"])
def test_nobody_looks_at_a_board_before_it_is_known_to_be_safe(call, name):
    asked = question(call("complaint=trips&danger=none"), name)
    assert asked.kind == "caller"
    assert asked.text.startswith("Is the way to the fuse box lit and dry")
    never = question(call("complaint=trips&danger=none", call_board="no"), name)
    assert never.kind == "question"
    assert never.lines[0].text.startswith("Please do not go and look.")
    allowed = question(call("complaint=trips&danger=none", call_board="yes"), name)
    assert allowed.lines[0].text.startswith(library().texts_for("gb-eng").questions[name].look.split(". ")[0])


def test_no_or_not_sure_is_one_key(call, reopen):
    say = board_prompt(call("complaint=trips&danger=none", call_ask="trip-device"), "fuse-box")
    assert [key.key for key in say.keys] == ["1", "0"]
    assert reopen(say.keys[1].href).state.caller == {"board": "no"}
    assert call_page(reopen(say.keys[0].href)).prompt.lines[0].text.startswith("Look at the fuse box")
