"""A call is a visit like any other, done for the agent's firm, with the telephone's link to the trail alone."""

import pytest

from triage.desk.call.open_call import base_context


def test_the_engine_never_sees_what_is_known_of_the_caller(call):
    opened = call("complaint=no-heat&danger=none", call_board="no", call_id="ABCDE")
    assert dict(opened.check_request.answers) == {"complaint": "no-heat", "danger": "none"}
    assert opened.check_request.problems == ()


def test_the_telephone_gets_the_trail_and_the_firm_and_nothing_of_the_call(call):
    opened = call("complaint=no-heat", call_alone="alone", call_id="ABCDE")
    assert opened.phone_href == "http://testserver/check/?region=gb-eng&firm=hearth&complaint=no-heat"


def test_the_firm_is_the_agents_whatever_the_address_says(call):
    opened = call("complaint=no-heat&firm=another")
    assert (opened.firm.slug, opened.check_request.firm) == ("hearth", opened.firm)


@pytest.mark.parametrize(("query", "place"), [("", "gb-eng"), ("region=us", "us"), ("region=atlantis", "gb-eng")])
def test_the_place_is_the_firms_unless_a_known_one_is_named(reopen, query, place):
    opened = reopen(f"/desk/call/?{query}")
    assert opened.check_request.region.id == place
    assert opened.check_request.notices == ()


def test_the_number_for_an_emergency_is_that_of_the_region(call):
    context = base_context(call(region="us"))
    assert (context["firm"].name, context["emergency"].number) == ("Hearth Repairs", "911")
    assert context["region"] == call(region="us").check_request.region.name
