"""Around every page: the firm, the place, and the number for an emergency there."""

from triage.desk.call.showing import around


def test_the_number_is_that_of_the_place(call):
    shown = around(call(region="us"))
    assert (shown["firm"].name, shown["emergency"].number) == ("Hearth Repairs", "911")
    assert shown["place"] == call(region="us").check_request.region.name
