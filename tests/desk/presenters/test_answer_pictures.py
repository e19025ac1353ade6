"""The pictures of a job sheet's readings: drawn from the frozen figures, once each, never in the way of the words."""

import pytest

from tests.check_pages.drawings.looking import only
from tests.check_pages.fragments import caption_of
from triage.desk.presenters.answer_weights import readings_with_pictures

METER = ("meter-power", "f35~s60~k1000~p2200")
HEAT = "c180~r30-174_40-190"


def drawn(*readings, region="gb-eng"):
    """The picture of each reading, or None."""
    told = [{"observation": name, "answer": text} for name, text in readings]
    return [picture for _answer, picture in readings_with_pictures({"readings": told, "region": {"id": region}})]


def test_each_kind_of_figures_has_its_picture():
    meter, heat, seal, fan, warm = drawn(
        METER,
        ("thermometer-mean", HEAT),
        ("paper-strip-test", "psgggxxxg"),
        ("fan-run-on", "h20~s25"),
        ("preheat-time", "m30~c200"),
    )
    assert only(meter, "hot")
    assert only(heat, "warmth")
    assert len(only(seal, "ray")) == 3
    assert only(fan, "seen")
    assert "It took 30 minutes." in caption_of(warm)


def test_figures_that_answer_several_questions_are_drawn_once():
    first, second, other = drawn(
        ("thermometer-mean", HEAT), ("thermometer-swing", HEAT), ("thermometer-duty", "c200~r9-9")
    )
    assert first is not None
    assert second is None
    assert other is not None


@pytest.mark.parametrize(
    "reading",
    [
        ("meter-power", "full"),
        ("meter-power", "k0~f2~s1"),
        ("meter-power", ""),
        ("thermometer-mean", "c180~r"),
        ("thermometer-mean", "x" * 700),
        ("paper-strip-test", "purple"),
        ("paper-strip-test", "p"),
        ("fan-run-on", "h-1"),
        ("preheat-time", "m0~c0"),
        ("complaint", "f35~s60~k1000"),
        ("from-another-pack", "f35~s60~k1000"),
    ],
)
def test_what_cannot_be_read_has_no_picture_and_the_others_keep_theirs(reading):
    none, meter = drawn(reading, METER)
    assert none is None
    assert meter is not None


@pytest.mark.parametrize(("region", "unit"), [("us", "°F"), ("de", "°C"), ("gone-region", "°C")])
def test_degrees_are_those_of_the_place(region, unit):
    (heat,) = drawn(("thermometer-mean", HEAT), region=region)
    assert unit in caption_of(heat)
