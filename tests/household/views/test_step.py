"""The check: each step gets its page, and a broken address heals itself."""

import re
from urllib.parse import parse_qsl, quote

import pytest

from tests.household.checks_done import address, answers_of, at, links_of, open_page
from tests.reading_pages import read_page
from triage.engine import Level
from triage.knowledge.library import library

PACK = library().pack
SWITCHING = re.compile(
    r"switch\w* (\w+ ){0,3}off|switch\w* (\w+ ){0,3}on\b(?! the way)|turn\w* (\w+ ){0,3}off|cut the power",
    re.IGNORECASE,
)


@pytest.mark.parametrize(
    ("answers", "heading"),
    [
        ({"complaint": "no-heat"}, "Is there any danger?"),
        ({"complaint": "smell", "smell-type": "gas"}, "Gas or fumes: get everyone out now"),
        (
            {"complaint": "will-not-light", "danger": "none", "oven-fuel": "gas"},
            "This check is only for electric ovens",
        ),
        (answers_of("fan-element-open", "no-heat"), "This is a job for an appliance engineer"),
    ],
)
def test_each_step_gets_its_page(client, answers, heading):
    assert open_page(client, at("/check/", answers)).one("h1").text == heading


def test_a_question_is_numbered_and_every_option_is_a_link(client):
    page = open_page(client, address(complaint="no-heat", danger="none"))
    assert page.one("p.count").text == "Question 1, at most 12"
    for link in page.select("ul.bars a"):
        assert link.attributes["href"] == link.attributes["hx-get"]
        assert "complaint=no-heat&danger=none&" in link.attributes["href"]
    assert page.select("ul.bars a")[-1].text == "I can’t tell"


RAISES = {flag: (o.id, option) for o in PACK.observations.values() for option, flag in o.flags.items()}
LEAVE = [f.id for f in PACK.red_flags.values() if f.switches == "never" and f.level is Level.EMERGENCY]
ENDING = [f.id for f in PACK.red_flags.values() if f.level.ends_check]


@pytest.mark.parametrize("region", library().regions)
@pytest.mark.parametrize("flag", LEAVE)
def test_whoever_has_to_leave_is_told_nothing_of_switching(client, region, flag):
    others = {
        "supply": "plug-in",
        "complaint": "wont-stop",
        "heat-when-off": "keeps-heating",
        "glass-state": "glass-broken",
    }
    for answers in ({}, others, {"people": "burnt"}):
        page = open_page(client, at("/check/", {**answers, **dict([RAISES[flag]])}, region))
        assert SWITCHING.findall(page.one("body").text) == []
        assert page.select("section.memory") + page.select("section.causes") + page.select("section.tell") == []


@pytest.mark.parametrize("region", library().regions)
def test_the_way_out_for_gas_never_speaks_of_switching_anything(client, region):
    page = open_page(client, address("/not-this/gas-smell/", region, complaint="no-heat"))
    assert SWITCHING.findall(page.one("body").text) == []


@pytest.mark.parametrize("flag", ENDING)
def test_every_red_flag_has_its_first_action_first_and_offers_no_task(client, flag):
    page = open_page(client, at("/check/", {"complaint": "no-heat", **dict([RAISES[flag]])}))
    steps = page.select("main ol.steps li")
    assert steps[0].text == library().texts_for("gb-eng").flags[flag].first[0]
    assert page.select("a.task") == []
    assert "/check/task/" not in repr(links_of(page))


def test_after_danger_only_memory_is_asked(client):
    page = open_page(client, address(complaint="smell", smell_type="plastic-or-fishy"))
    asked = page.one("section.memory")
    assert "from memory" in asked.one("h2").text
    for link in asked.select("ul.bars a"):
        (named,) = {name for name, _ in parse_qsl(link.attributes["href"])} & set(PACK.observations) - {
            "complaint",
            "smell-type",
        }
        assert PACK.observations[named].method == "memory"


def test_a_broken_address_says_so_and_the_next_tap_heals_it(client):
    page = open_page(client, "/check/?complaint=no-heat&danger=none&zap=1&heat-main=blue&region=gb-eng")
    note = page.one("details.note").text
    assert "We did not know the question “zap”. It was left out." in note
    assert "We did not know the answer “blue” to “Oven heat”. It was left out." in note
    healed = open_page(client, page.select("ul.bars a")[0].attributes["href"])
    assert healed.select("details.note") == []
    assert "complaint=no-heat&danger=none&" in page.select("ul.bars a")[0].attributes["href"]


def test_markup_in_an_address_is_shown_as_text(client):
    attack = "<script>alert(1)</script>"
    response = client.get(f"/check/?{quote(attack)}={quote(attack)}&complaint={quote(attack)}&danger=none")
    assert attack not in response.content.decode()
    assert attack in read_page(response).one("details.note").text


def test_ten_thousand_parameters_are_read(client):
    query = "complaint=no-heat&" + "&".join(f"a{n}={n}" for n in range(10_000))
    page = open_page(client, f"/check/?{query}")
    assert "too long" in page.one("p.note").text
    assert "complaint=no-heat" in page.select("nav.way-out a")[0].attributes["href"]
