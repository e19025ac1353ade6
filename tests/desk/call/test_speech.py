"""Nothing takes longer to say than a person can follow, in any region, whoever calls."""

from collections import Counter

import pytest

from tests.desk.call.drawn_calls import drawn_calls
from tests.desk.call.reading_aloud import query_of
from triage.check_pages.presenters.emergency import emergency_page
from triage.desk.call.presenters.advice_script import emergency, out_of_scope, result
from triage.desk.call.presenters.alarm import alarm_of
from triage.desk.call.presenters.script import board_question, keep_away_line, spoken_lines
from triage.desk.call.speech import MAX_SECONDS, MAX_WORDS, line_id, seconds_to_say, split_for_speech
from triage.engine import Emergency, OutOfScope, Result
from triage.knowledge.library import library

TELLING = {Result: result, Emergency: emergency, OutOfScope: out_of_scope}
DRAWN = 160


def test_seconds_are_counted_at_150_words_a_minute():
    assert [seconds_to_say("word " * n) for n in (0, 1, 25, 50, 51)] == [0, 1, 10, 20, 21]


def test_a_long_text_is_parted_between_sentences_and_nothing_is_lost():
    text = " ".join(f"{'word ' * 19}end{n}." for n in range(6))
    pieces = split_for_speech(text)
    assert " ".join(pieces).split() == text.split()
    assert all(len(piece.split()) <= MAX_WORDS for piece in pieces)
    assert split_for_speech("Short. And sweet.") == ["Short. And sweet."]


def test_a_mark_belongs_to_these_very_words():
    assert line_id("Leave it off.") == line_id("Leave it off.")
    assert line_id("Leave it off.") != line_id("Leave it on.")
    assert len(line_id("")) == 6


@pytest.mark.parametrize("region", library().regions)
def test_no_question_round_or_line_takes_more_than_twenty_seconds(region, call):
    texts = library().texts_for(region)
    spoken = [spoken.say for spoken in texts.calls.rounds]
    for question in texts.questions.values():
        spoken += [question.say, question.again, *split_for_speech(question.look)]
    for flag in texts.flags.values():
        for line in (*flag.first, *flag.never, flag.then):
            spoken += split_for_speech(line)
    for supply in texts.isolation.supplies.values():
        for line in (*supply.steps, supply.cannot):
            spoken += split_for_speech(line)
    for fault in texts.faults.values():
        spoken += [*split_for_speech(fault.now), *split_for_speech(fault.job)]
    opened = call(region=region)
    spoken += [
        board_question(opened),
        keep_away_line(opened),
        *split_for_speech(opened.check_request.region.claim_first),
    ]
    spoken += split_for_speech(opened.check_request.region.isolation_note)
    assert [(seconds_to_say(text), text) for text in spoken if seconds_to_say(text) > MAX_SECONDS] == []


def test_no_composed_line_of_drawn_calls_takes_more_than_twenty_seconds(call):
    """Lines put together out of many texts, or of a text and a name, which no look at the pack alone would measure."""
    told, regions, too_long = Counter(), set(), []
    for region, answers, caller in drawn_calls(DRAWN, "spoken lines"):
        opened = call(query_of(answers), region, **{**caller, "call_board": "yes"})
        step = opened.check_request.step
        if type(step) not in TELLING:
            continue
        told[type(step)] += 1
        regions.add(region)
        alarm = alarm_of(opened)
        lines = [line.text for line in TELLING[type(step)](opened, step).lines] + ([alarm.instruction] if alarm else [])
        too_long += [(seconds_to_say(line), line) for line in lines if seconds_to_say(line) > MAX_SECONDS]
    assert too_long == []
    assert min(told[Result], told[Emergency]) >= DRAWN // 4
    assert len(regions) >= 10


def test_instructions_are_read_with_their_steps_and_notes(call):
    check_request = call("smell-type=plastic-or-fishy").check_request
    lines = spoken_lines(emergency_page(check_request, check_request.step).steps)
    assert lines[0].startswith("Turn the oven's controls to off.")
    assert check_request.region.isolation_note in lines


def test_asking_again_is_never_longer_than_asking():
    texts = library().texts_for("gb-eng")
    longer = {name for name, text in texts.questions.items() if len(text.again.split()) > len(text.say.split())}
    assert longer == set()
