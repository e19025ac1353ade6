"""Where somebody asked for less motion the drawing stands still; else one part moves, where air or heat does."""

import pytest
from playwright.sync_api import expect

from tests.household.checks_done import address, answers_of, at

MOVING = "document.getAnimations().filter((one) => one.playState === 'running').length"
FAN = {name: told for name, told in answers_of("circ-fan-stopped", "uneven").items() if name != "circ-fan-state"}
DRAWN = {
    "fan": at("/check/", FAN),
    "ring": at("/check/", answers_of("fan-element-open", "no-heat")),
}


@pytest.fixture
def slow(page):
    """A page whose clock for drawings stands, so that a busy machine finds what moves before it ends."""
    session = page.context.new_cdp_session(page)
    session.send("Animation.enable")
    session.send("Animation.setPlaybackRate", {"playbackRate": 0})
    return page


@pytest.mark.parametrize("part", DRAWN)
def test_a_part_moves_unless_less_motion_is_asked_for(slow, part):
    for motion, moving in (("no-preference", 1), ("reduce", 0)):
        slow.emulate_media(reduced_motion=motion)
        slow.goto(slow.site + DRAWN[part])
        expect(slow.locator(f".drawing .oven--{part}")).to_be_visible()
        assert slow.evaluate(MOVING) == moving, motion


def test_a_drawing_of_what_moves_no_air_stands_still(slow):
    slow.goto(slow.site + address(complaint="no-heat", danger="none"))
    assert slow.evaluate(MOVING) == 0
