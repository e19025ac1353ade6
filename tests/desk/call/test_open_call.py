"""A call is a visit like any other, with the telephone's link to the trail alone."""


def test_the_engine_never_sees_what_is_known_of_the_caller(call):
    opened = call("complaint=no-heat&danger=none", call_board="no", call_id="ABCDE")
    assert dict(opened.visit.reading.answers) == {"complaint": "no-heat", "danger": "none"}
    assert opened.visit.reading.problems == ()


def test_the_telephone_gets_the_trail_and_nothing_of_the_call(call):
    opened = call("complaint=no-heat", call_alone="alone", call_id="ABCDE")
    assert opened.phone_href == "http://testserver/check/?region=gb-eng&complaint=no-heat"
