"""Every link carries the answers that could be used, the region and the firm."""

from triage.check_pages.links import Links
from triage.query import parse_query


def test_a_link_adds_replaces_and_leaves_out_answers():
    links = Links("ie", {"complaint": "no-heat", "danger": "none"})
    assert links.step({"lamp-state": "lamp-works"}) == (
        "/check/?region=ie&complaint=no-heat&danger=none&lamp-state=lamp-works"
    )
    assert links.step({"complaint": "trips"}) == "/check/?region=ie&complaint=trips&danger=none"
    assert links.step(without=["danger"]) == "/check/?region=ie&complaint=no-heat"


def test_each_page_has_its_link():
    links = Links("ie", {"complaint": "no-heat"})
    assert links.danger() == "/danger/?region=ie&complaint=no-heat"
    assert links.task("set-clock", {"cold": "yes"}) == "/check/task/set-clock/?region=ie&complaint=no-heat&cold=yes"
    assert links.summary() == "/check/summary/?region=ie&complaint=no-heat"
    assert links.leave("microwave") == "/not-this/microwave/?region=ie&complaint=no-heat"
    assert links.start() == "/?region=ie&complaint=no-heat"
    assert links.restart() == "/?region=ie"
    assert links.with_region("us") == "/?region=us&complaint=no-heat"


def test_what_a_link_carries_is_read_back_the_same():
    answers = {"a&b": "c=d e", "é": "%"}
    assert dict(parse_query(Links("ie", answers).step().partition("?")[2]).pairs) == answers


def test_the_firm_is_no_answer_and_goes_along_everywhere():
    asked = parse_query("firm=other&complaint=no-heat&firm=hearth")
    assert (asked.firm, asked.pairs) == ("hearth", (("complaint", "no-heat"),))
    links = Links("ie", {"complaint": "no-heat"}, "hearth")
    assert links.hand_over() == "/check/hand-over/?region=ie&firm=hearth&complaint=no-heat"
    for address in (
        links.restart(),
        links.with_region("us"),
        links.danger(),
        links.costs(),
        links.summary(),
        links.leave("gas"),
    ):
        assert "&firm=hearth" in address
    assert "firm" not in Links("ie", {"complaint": "no-heat"}).step()
    assert links.context_params() == {"region": "ie", "firm": "hearth"}


def test_what_is_typed_into_a_reading_is_no_answer_and_goes_no_further():
    asked = parse_query("complaint=no-heat&read-seconds=60&cost-use=4&read-form=1")
    assert asked.pairs == (("complaint", "no-heat"),)
    assert asked.typed == {"read-seconds": "60", "cost-use": "4", "read-form": "1"}


def test_onward_is_the_check_once_somebody_said_what_is_wrong():
    assert (
        Links("us", {"danger": "none"})
        .continue_url({"lamp-state": "lit"})
        .startswith("/?region=us&danger=none&lamp-state=")
    )
    assert Links("us", {"complaint": "lamp"}).continue_url() == "/check/?region=us&complaint=lamp"


def test_a_readings_address_carries_the_answers_and_its_form_does_not():
    links = Links("us", {"danger": "none"})
    assert links.reading("run-on", {"cold": "yes"}) == "/reading/run-on/?region=us&danger=none&cold=yes"
    assert (links.reading_path("run-on"), links.task_path("set-clock")) == (
        "/reading/run-on/",
        "/check/task/set-clock/",
    )
