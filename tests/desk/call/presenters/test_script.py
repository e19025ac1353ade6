"""Lines are ticked one after another, and none sends anybody where they can't go safely."""

from triage.desk.call.presenters.script import board_question, build_script, keep_away_line, spoken_lines
from triage.desk.call.speech import line_id

GO = "Go to the fuse box and switch off the trip switch."
LINES = ["Step back.", GO, "Leave it off."]


def texts_of(told):
    return [line.text for line in told.lines]


def test_one_line_at_a_time_has_its_turn(call):
    told = build_script(call(call_board="yes"), LINES)
    assert texts_of(told) == LINES
    assert [bool(line.href) for line in told.lines] == [True, False, False]
    after = build_script(call(call_board="yes", call_read=line_id("Step back.")), LINES)
    assert [line.read for line in after.lines] == [True, False, False]
    assert [bool(line.href) for line in after.lines] == [False, True, False]
    assert not after.done


def test_all_read_is_done(call):
    told = build_script(call(call_board="yes", call_read=",".join(map(line_id, LINES))), LINES)
    assert told.done
    assert [line.href for line in told.lines] == ["", "", ""]


def test_a_line_that_sends_to_the_board_waits_for_what_the_caller_says(call):
    first = build_script(call(), LINES)
    assert texts_of(first) == ["Step back."]
    assert not first.ask_board
    assert not first.done
    then = build_script(call(call_read=line_id("Step back.")), LINES)
    assert then.ask_board
    assert not then.done


def test_who_cannot_get_there_is_kept_away_instead(call):
    opened = call(call_board="no")
    told = build_script(opened, LINES)
    assert texts_of(told) == ["Step back.", keep_away_line(opened), "Leave it off."]
    assert told.left_out == [GO]


def test_who_is_not_with_the_oven_is_not_sent_and_not_asked(call):
    told = build_script(call(call_oven="no", call_board="yes"), LINES)
    assert GO not in texts_of(told)
    assert not told.ask_board


def test_the_question_names_the_board_as_people_there_do(call):
    assert "fuse box" in board_question(call())
    place = call(region="us").check_request.region
    assert place.terms["board"] in board_question(call(region="us"))


def test_lines_of_nothing_are_nothing():
    assert spoken_lines([]) == []
