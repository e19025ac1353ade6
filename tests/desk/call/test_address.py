"""What belongs to the call stands beside the trail and never in it; nothing in an address is trusted."""

from urllib.parse import parse_qsl, urlsplit

from triage.desk.call.address import MAX_LINE_IDS, split_query
from triage.query import parse_query


def query_of(href):
    return dict(parse_qsl(urlsplit(href).query))


def test_the_trail_and_the_call_are_parted():
    line, asked = split_query(parse_query("region=us&complaint=no-heat&call-id=ABCDE&call-board=no&call-read=0a1b2c"))
    assert asked.pairs == (("complaint", "no-heat"),)
    assert asked.region == "us"
    assert (line.id, dict(line.caller), line.read_lines) == ("ABCDE", {"board": "no"}, ("0a1b2c",))
    assert line.unknown_params == ()


def test_what_means_nothing_is_named_and_left_out():
    line, asked = split_query(parse_query("call-board=maybe&call-mood=cross&call-id=abc&lamp-state=lamp-dead"))
    assert line.unknown_params == ("call-board", "call-mood", "call-id")
    assert (line.id, dict(line.caller)) == ("", {})
    assert asked.pairs == (("lamp-state", "lamp-dead"),)


def test_an_earlier_reference_is_kept_as_it_was_typed_and_goes_into_no_link(call):
    opened = call("complaint=no-heat", call_earlier="KD7MX")
    assert (opened.state.previous_reference, opened.state.unknown_params) == ("KD7MX", ())
    assert "KD7MX" not in opened.links.current()


def test_a_call_begins_with_more_answers_where_the_oven_stands(call):
    begun = query_of(call("complaint=no-heat", call_id="ABCDE").links.starting_with({"complaint": "trips"}, "us"))
    assert begun == {"region": "us", "complaint": "no-heat", "call-id": "ABCDE"}


def test_marks_are_read_once_each_and_not_without_end():
    marks = "&".join(f"call-read={number:06x},{number:06x},zzz" for number in range(500))
    line, _ = split_query(parse_query(marks))
    assert line.read_lines[:2] == ("000000", "000001")
    assert len(line.read_lines) == MAX_LINE_IDS


def test_many_marks_come_back_whole(call):
    marks = [f"{number:06x}" for number in range(100)]
    again, _ = split_query(parse_query(urlsplit(call().links.with_read(*marks)).query))
    assert list(again.read_lines) == marks


def test_every_link_keeps_the_call(call):
    links = call("complaint=no-heat", call_id="ABCDE", call_board="yes", call_read="0a1b2c").links
    kept = {"region": "gb-eng", "complaint": "no-heat", "call-id": "ABCDE", "call-board": "yes", "call-read": "0a1b2c"}
    assert query_of(links.current()) == kept
    assert query_of(links.with_answers({"danger": "none"}, ["ffffff"])) == {
        **kept,
        "danger": "none",
        "call-read": "0a1b2c,ffffff",
    }
    assert query_of(links.with_caller("alone", "alone")) == {**kept, "call-alone": "alone"}
    assert query_of(links.with_question("lamp-state")) == {**kept, "call-ask": "lamp-state"}
    assert "complaint" not in query_of(links.without("complaint"))


def test_the_wish_to_ask_something_lasts_until_it_is_answered(call):
    links = call("complaint=no-heat", call_ask="lamp-state").links
    assert query_of(links.with_read("ffffff"))["call-ask"] == "lamp-state"
    assert query_of(links.with_caller("board", "no"))["call-ask"] == "lamp-state"
    assert "call-ask" not in query_of(links.with_answers({"lamp-state": "lamp-dead"}))
