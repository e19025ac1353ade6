"""How a reading stands in a trail: short, ASCII, replayable; and the reason where it cannot be used."""

import pytest
from hypothesis import given, strategies

from triage.engine.readings import meter, thermometer
from triage.engine.readings.encoding import (
    MAX_ITEMS,
    MAX_TEXT_LENGTH,
    InvalidReading,
    decode_fields,
    encode,
    read_number,
    read_numbers,
    read_pairs,
)
from triage.engine.readings.evidence import READERS

TAPS = "x" + "_".join(str(second) for second in range(MAX_ITEMS))


def reason(kind, text):
    with pytest.raises(InvalidReading) as caught:
        READERS[kind](text)
    return caught.value.reason, caught.value.field


def test_what_was_typed_is_written_in_the_order_of_the_table_without_spaces():
    typed = {"impulses": " 1 000", "flashes": "21", "seconds": "30,5", "background": ""}
    assert encode(meter.METER_FIELDS, typed) == "f21~s30,5~k1000"
    assert read_number(meter.METER_FIELDS, decode_fields(meter.METER_FIELDS, "f21~s30,5"), "seconds") == 30.5


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", ("not-a-reading", "")),
        ("F21", ("not-a-reading", "")),
        ("f21 s30", ("not-a-reading", "")),
        ("f21~~s30", ("not-a-reading", "")),
        ("f" + "1" * MAX_TEXT_LENGTH, ("not-a-reading", "")),
        ("q3", ("unknown-field", "")),
        ("f21~f22~s30~k1000", ("twice", "flashes")),
        ("p2200", ("missing", "flashes")),
        ("f21~k1000", ("missing", "seconds")),
        ("f21~s30~k1000~i200~j900", ("one-way", "flashes")),
        ("f21~sx~k1000", ("not-a-number", "seconds")),
        ("f21~s1.2.3~k1000", ("not-a-number", "seconds")),
        ("f21~s0~k1000", ("too-small", "seconds")),
        ("f21~s-30~k1000", ("too-small", "seconds")),
        ("f2.5~s30~k1000", ("not-whole", "flashes")),
        ("f21~s30~k0", ("too-small", "impulses")),
        ("f21~s30~k1000~p20", ("too-small", "plate")),
        ("f21~s30~k1000~p20000", ("too-large", "plate")),
        ("a12~z11~m10", ("backwards", "after")),
        ("x0_1_1_2_3~k1000", ("out-of-order", "taps")),
        ("x0_1_2~k1000", ("too-few", "taps")),
        (TAPS + "_60.5~k1000", ("too-many", "taps")),
    ],
)
def test_a_meter_reading_that_cannot_be_used_says_why_and_which_field(text, why):
    assert reason("meter", text) == why


@pytest.mark.parametrize(
    ("kind", "text", "why"),
    [
        ("thermometer", "c180~r30-900_40-180", ("too-large", "temperature")),
        ("thermometer", "c180~r" + "_".join(["30-180"] * 60), ("out-of-order", "readings")),
        ("thermometer", "c180~r30-180_20-170", ("out-of-order", "readings")),
        ("thermometer", "c180~r30", ("not-a-number", "readings")),
        ("thermometer", "c180", ("missing", "readings")),
        ("thermometer", "c180~r-5-100", ("not-a-number", "readings")),
        ("run-on", "h20~s10", ("backwards", "stopped")),
        ("run-on", "s10", ("missing", "heard")),
        ("preheat", "m0~c200", ("too-small", "minutes")),
        ("preheat", "m10~c900", ("too-large", "set")),
        ("gasket", "pgggg", ("not-a-reading", "")),
        ("gasket", "pggggggg?", ("not-a-reading", "places")),
        ("gasket", "pxxxxgggg", ("too-few", "places")),
    ],
)
def test_every_kind_says_why_and_which_field(kind, text, why):
    assert reason(kind, text) == why


def test_lists_and_pairs_are_read_in_order():
    raw = decode_fields(thermometer.THERMOMETER_FIELDS, "c180~r0-20_5.5-90,5")
    assert read_pairs(thermometer.THERMOMETER_FIELDS, raw, "readings", "temperature") == ((0.0, 20.0), (5.5, 90.5))
    assert read_numbers(meter.METER_FIELDS, decode_fields(meter.METER_FIELDS, "x0_1.5_3"), "taps") == (0.0, 1.5, 3.0)


def refusal(read, text):
    """The reason why a text is refused, or None where it is read; anything else that is raised fails the test."""
    try:
        read(text)
    except InvalidReading as fault:
        return fault.reason
    return None


@given(kind=strategies.sampled_from(sorted(READERS)), text=strategies.text(max_size=40))
def test_whatever_is_sent_is_read_or_refused_with_a_reason(kind, text):
    why = refusal(READERS[kind], text)
    assert why or (text.isascii() and " " not in text)


@given(text=strategies.from_regex(r"[a-z][0-9._-]{1,12}(~[a-z][0-9._-]{1,8}){0,5}", fullmatch=True))
def test_anything_that_looks_like_a_reading_is_read_or_refused_with_a_reason(text):
    assert "" not in {refusal(read, text) for read in READERS.values()}
