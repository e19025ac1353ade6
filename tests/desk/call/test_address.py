"""What belongs to the call stands beside the trail and never in it; nothing in an address is trusted."""

from urllib.parse import parse_qsl, urlsplit

from triage.check_pages.query import parse_query
from triage.desk.call.address import MOST_MARKS, split


def query_of(href):
    return dict(parse_qsl(urlsplit(href).query))


def test_the_trail_and_the_call_are_parted():
    line, asked = split(parse_query("region=us&complaint=no-heat&call-id=ABCDE&call-board=no&call-read=0a1b2c"))
    assert asked.pairs == (("complaint", "no-heat"),)
    assert asked.region == "us"
    assert (line.id, dict(line.caller), line.read) == ("ABCDE", {"board": "no"}, ("0a1b2c",))
    assert line.strange == ()


def test_what_means_nothing_is_named_and_left_out():
    line, asked = split(parse_query("call-board=maybe&call-mood=cross&call-id=abc&lamp-state=lamp-dead"))
    assert line.strange == ("call-board", "call-mood", "call-id")
    assert (line.id, dict(line.caller)) == ("", {})
    assert asked.pairs == (("lamp-state", "lamp-dead"),)


def test_an_earlier_reference_is_kept_as_it_was_typed_and_goes_into_no_link(call):
    opened = call("complaint=no-heat", call_earlier="KD7MX")
    assert (opened.line.earlier, opened.line.strange) == ("KD7MX", ())
    assert "KD7MX" not in opened.links.here()


def test_a_call_begins_with_more_answers_where_the_oven_stands(call):
    begun = query_of(call("complaint=no-heat", call_id="ABCDE").links.beginning_with({"complaint": "trips"}, "us"))
    assert begun == {"region": "us", "complaint": "no-heat", "call-id": "ABCDE"}


def test_marks_are_read_once_each_and_not_without_end():
    marks = "&".join(f"call-read={number:06x},{number:06x},zzz" for number in range(500))
    line, _ = split(parse_query(marks))
    assert line.read[:2] == ("000000", "000001")
    assert len(line.read) == MOST_MARKS


def test_many_marks_come_back_whole(call):
    marks = [f"{number:06x}" for number in range(100)]
    again, _ = split(parse_query(urlsplit(call().links.having_read(*marks)).query))
    assert list(again.read) == marks


def test_every_link_keeps_the_call(call):
    links = call("complaint=no-heat", call_id="ABCDE", call_board="yes", call_read="0a1b2c").links
    kept = {"region": "gb-eng", "complaint": "no-heat", "call-id": "ABCDE", "call-board": "yes", "call-read": "0a1b2c"}
    assert query_of(links.here()) == kept
    assert query_of(links.with_answers({"danger": "none"}, ["ffffff"])) == {
        **kept,
        "danger": "none",
        "call-read": "0a1b2c,ffffff",
    }
    assert query_of(links.about_caller("alone", "alone")) == {**kept, "call-alone": "alone"}
    assert query_of(links.asking("lamp-state")) == {**kept, "call-ask": "lamp-state"}
    assert "complaint" not in query_of(links.without("complaint"))


def test_the_wish_to_ask_something_lasts_until_it_is_answered(call):
    links = call("complaint=no-heat", call_ask="lamp-state").links
    assert query_of(links.having_read("ffffff"))["call-ask"] == "lamp-state"
    assert query_of(links.about_caller("board", "no"))["call-ask"] == "lamp-state"
    assert "call-ask" not in query_of(links.with_answers({"lamp-state": "lamp-dead"}))
