"""The shapes of a pack: closed sets in the order that decides, values nobody can change."""

from dataclasses import FrozenInstanceError, fields

import pytest

from tests.builders import ANYWHERE, make_pack
from triage.engine.pack import Band, Level, Limits


def test_the_bands_are_in_order_of_severity():
    assert sorted(Band, key=lambda band: band.severity) == [
        Band.NORMAL,
        Band.SELF_CHECK,
        Band.QUALIFIED,
        Band.MAKE_SAFE,
    ]


@pytest.mark.parametrize(("level", "ends"), [("emergency", True), ("stop", True), ("caution", False)])
def test_an_emergency_and_a_stop_end_the_questions_and_a_caution_does_not(level, ends):
    assert Level(level).ends_check is ends


def test_a_pack_cannot_be_changed_once_built():
    pack = make_pack()
    for shape in (pack, pack.limits, ANYWHERE, *pack.faults.values(), *pack.observations.values()):
        with pytest.raises(FrozenInstanceError, match="cannot assign to field"):
            setattr(shape, fields(shape)[0].name, "another")


def test_two_packs_are_the_same_only_if_they_are_one():
    assert make_pack() == make_pack()
    assert make_pack() != make_pack(version="another")
    assert len({make_pack(), make_pack(), make_pack(version="another")}) == 2


def test_the_limits_are_those_of_a_short_check():
    assert Limits() == Limits(max_questions=12, stop_probability=0.85, min_bits=0.04, plausible_probability=0.01)
