"""The traps a safety sheet warns of, each on its own page, and what the safety sheet says of every red flag."""

import re

import pytest

from tests.safety.browsing import ending_answers, look_at_page, open_page
from tests.safety.invariants import band_now
from tests.safety.page_invariants import PERMITS_USE
from tests.safety.places import region_classes
from tests.safety.result import SearchResult
from tests.safety.safety_sheet import LEVELS, SWITCHES, TOUCHED, gravity
from tests.safety.traps import told_to_do
from tests.safety.walking import region_named, signs_of
from triage.engine import NONE_OF_THESE, SCREEN, Band, Emergency, Question, run_check
from triage.knowledge.library import library

PACK = library().pack
HERE = "gb-eng"
REGIONS = [found.region.id for found in region_classes()]
DEVICES = list(PACK.observations["trip-device"].flags)
TRIPPED = [("complaint", "trips"), (SCREEN, NONE_OF_THESE)]
LATE = [("complaint", "no-heat"), ("heat-main", "no-heat"), (SCREEN, NONE_OF_THESE), ("function-pattern", "fan-fails")]
LATE += [("onset", "sudden"), ("heating-light", "light-stays-on"), ("age-band", "five-to-ten"), ("cold", "yes")]


def look(pairs, region=HERE):
    found = SearchResult()
    shown = look_at_page(found, region, pairs)
    assert found.violations == ""
    return shown


def actions(shown):
    return [e.text for e in shown.classed("ol", "steps")[0].all() if e.tag == "li"]


@pytest.mark.parametrize("flag", PACK.red_flags)
def test_every_red_flag_is_as_grave_and_as_strict_as_the_safety_sheet_has_it(flag):
    raised = PACK.red_flags[flag]
    assert gravity(raised.level.value) >= gravity(LEVELS[flag])
    assert SWITCHES.index(raised.switches) <= SWITCHES.index(TOUCHED.get(flag, "any"))


def test_every_ending_flag_can_be_raised_and_every_sign_on_the_danger_page_ends_the_check():
    raised = {PACK.observations[name].flags[option] for name, option in ending_answers(PACK)}
    assert raised == {flag.id for flag in PACK.red_flags.values() if flag.level.ends_check}
    assert set(signs_of(PACK)) <= set(ending_answers(PACK))


@pytest.mark.parametrize("sign", ending_answers(PACK), ids="=".join)
def test_danger_told_late_stops_the_check_just_as_told_early(sign):
    early, late = look([sign]), look([*LATE, sign])
    assert isinstance(early.step, Emergency)
    assert isinstance(late.step, Emergency)
    assert [flag.id for flag in late.step.flags] == [flag.id for flag in early.step.flags]
    assert late.page.one("h1").text == early.page.one("h1").text
    assert actions(late) == actions(early)


@pytest.mark.parametrize("region", REGIONS)
@pytest.mark.parametrize("device", DEVICES)
def test_a_single_trip_is_work_for_a_qualified_person_and_the_oven_stays_off(device, region):
    for tried in ([], [("trip-reset", "not-tried")], [("trip-reset", "held")]):
        pairs = [*TRIPPED, ("trip-device", device), *tried]
        check = run_check(PACK, region_named(region), pairs)
        assert band_now(check) is Band.QUALIFIED
        if isinstance(check.step, Question):
            assert PACK.observations[check.step.observation].method != "trial"


@pytest.mark.parametrize("region", REGIONS)
@pytest.mark.parametrize("device", DEVICES)
def test_a_trip_after_the_one_reset_is_make_safe(device, region):
    pairs = [*TRIPPED, ("trip-device", device), ("trip-reset", "tripped-again")]
    step = run_check(PACK, region_named(region), pairs).step
    assert isinstance(step, Emergency)
    assert step.flags[0].id == "trips-again"


def test_the_advice_after_a_trip_says_leave_it_off_and_one_reset_at_most():
    pairs = [*TRIPPED, ("trip-device", "breaker"), ("trip-reset", "not-tried")]
    while isinstance(step := run_check(PACK, region_named(HERE), pairs).step, Question):
        pairs.append((step.observation, "cant-tell"))
    shown = look(pairs)
    assert "It tripped: leave it off" in shown.words
    assert "Do not put it back more than once, and never hold it on." in shown.words
    assert [line for line in shown.lines if PERMITS_USE.search(line)] == []
    assert not re.search(r"try (each|every|another|other) setting", shown.words)


def test_nobody_is_told_to_reset_twice_or_to_hunt_for_what_trips():
    texts = library().texts_for(HERE)
    told = [*texts.flags["tripped"].first, *texts.flags["trips-again"].first, *texts.tasks["reset-once"].steps]
    assert not [line for line in told if re.search(r"\b(twice|again and again|each (setting|function))\b", line)]
    assert "Do not try settings to see which one trips." in texts.flags["tripped"].never
    assert "Leave the oven cut off, whatever comes of it." in texts.tasks["reset-once"].steps


@pytest.mark.parametrize("region", library().regions)
def test_gas_on_the_first_page_leads_out_without_a_switch(region):
    shown = open_page(region, path="/not-this/gas-smell/")
    assert not [line for line in told_to_do(shown) if re.search(r"\b(switch|plug|turn off)", line, re.IGNORECASE)]
    assert shown.lines
    assert "Get everyone out" in shown.words


def test_a_task_whose_caution_says_to_cut_the_supply_has_a_gate_that_asks_for_it():
    supply = {"supply-off", "plug-or-breaker-off", "oven-apart"}
    texts = library().texts_for(HERE)
    for name, text in texts.tasks.items():
        if any(caution.sign == "disconnect" for caution in text.cautions):
            assert supply & set(PACK.tasks[name].gates), f"{name} says to cut the supply and does not ask"


def test_no_task_opens_moves_or_measures_anything():
    """A fixed cover, wiring, a voltage and the weight of an oven are never an ordinary person's."""
    forbidden = re.compile(
        r"\b(unscrew|screwdriver|multimeter|tester|volt(age|meter)|pull (the|your) oven|slide (the|your) oven"
        r"|take off (the|a) (back|panel|cover plate)|remove (the|a) (panel|back|cover))\b",
        re.IGNORECASE,
    )
    for name, text in library().texts_for(HERE).tasks.items():
        for line in text.steps:
            if not re.match(r"(do not|never|unscrew nothing|use no)\b", line, re.IGNORECASE):
                assert not forbidden.search(line), f"{name}: {line}"
