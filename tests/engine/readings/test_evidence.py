"""From a written reading to evidence: no limit is hard, an option's id weighs as ever, and a danger is seen early."""

from math import inf

import pytest
from hypothesis import given, strategies

from tests.builders import electric_oven
from tests.engine.trails import some
from tests.published.places import place
from triage.engine import Emergency, Question, Result, compile_model, infer_belief, parse_answers, run_check
from triage.engine.pack import CANT_TELL
from triage.engine.readings import (
    QUANTITIES,
    READERS,
    flags_raised_by,
    invalid_reason,
    level_likelihood,
    option_likelihoods,
)
from triage.engine.readings.gasket import SEAL_PLACES
from triage.engine.readings.run_on import ENDLESS_MINUTES

PACK = electric_oven()
MODEL = compile_model(PACK, place("gb-eng"))
MEASURED = [o for o in PACK.observations.values() if o.measurement]
NUDGE, SLIGHTLY = 1e-4, 2e-3
NO_POWER, FULL_POWER = "f1~s60~k1000~b100~p2200", "f40~s60~k1000~b100~p2300"
LIGHT_STAYS_ON = (
    ("complaint", "no-heat"),
    ("danger", "none"),
    ("heating-system", "fan-only"),
    ("heating-light", "light-stays-on"),
)


def number(low, high):
    return strategies.floats(low, high)


def rising(low, high, count):
    steps = strategies.lists(number(low, high), min_size=2, max_size=count)
    return steps.map(lambda found: [sum(found[: i + 1]) for i in range(len(found))])


@strategies.composite
def inputs(draw):
    """A kind, its numbers in one flat list, and how to write them."""
    rating = [draw(number(800, 4000)), draw(number(215, 255))]
    shape = draw(strategies.sampled_from(sorted(SHAPES)))
    kind, numbers, text = SHAPES[shape]
    found = draw(numbers)
    return kind, [*found, *rating], text


def plate(values):
    return f"~p{values[0]:.6f}~v{values[1]:.6f}"


def listed(values):
    return "_".join(f"{value:.6f}" for value in values)


def temperatures(values):
    half = len(values) // 2
    return "_".join(f"{t:.6f}-{y:.6f}" for t, y in zip(sorted(values[:half]), values[half:], strict=False))


def timed_temperatures():
    return rising(1, 12, 9).flatmap(
        lambda times: strategies.lists(number(60, 290), min_size=len(times), max_size=len(times)).map(
            lambda found: [*times, *found]
        )
    )


SHAPES = {
    "display": (
        "meter",
        strategies.tuples(number(0, 900), number(0, 4000)),
        lambda v: f"i{v[0]:.6f}~j{v[1]:.6f}" + plate(v[2:]),
    ),
    "flashes": (
        "meter",
        strategies.tuples(number(10, 900), number(0, 900)),
        lambda v: f"f20~k1000~s{v[0]:.6f}~b{v[1]:.6f}" + plate(v[2:]),
    ),
    "register": (
        "meter",
        strategies.tuples(number(1, 1.4), number(1.5, 2), number(2, 30)),
        lambda v: f"a{v[0]:.6f}~z{v[1]:.6f}~m{v[2]:.6f}" + plate(v[3:]),
    ),
    "taps": (
        "meter",
        rising(0.8, 40, 14).filter(lambda v: len(v) > 4),
        lambda v: f"x{listed(v[:-2])}~k1000" + plate(v[-2:]),
    ),
    "thermometer": ("thermometer", timed_temperatures(), lambda v: f"c180~r{temperatures(v[:-2])}"),
    "run-on": ("run-on", number(0, 50).map(lambda h: [h, h + 7.0]), lambda v: f"h{v[0]:.6f}~s{v[1] + 1:.6f}"),
    "still running": ("run-on", number(0, 130).map(lambda h: [h]), lambda v: f"h{v[0]:.6f}"),
    "preheat": (
        "preheat",
        strategies.tuples(number(3, 90), number(160, 240)),
        lambda v: f"m{v[0]:.6f}~c{v[1]:.6f}" + plate(v[2:]),
    ),
}


def share(values):
    total = sum(values)
    return [value / total for value in values]


@some
@given(made=inputs(), which=strategies.integers(0, 30))
def test_moving_any_input_slightly_moves_what_it_says_slightly(made, which):
    kind, numbers, text = made
    nudged = list(numbers)
    nudged[which % len(numbers)] += NUDGE
    for observation in (o for o in MEASURED if o.measurement.kind == kind):
        one, other = level_likelihood(observation, text(numbers)), level_likelihood(observation, text(nudged))
        assert share(one) == pytest.approx(share(other), abs=SLIGHTLY)


@some
@given(made=inputs(), which=strategies.integers(0, 30))
def test_moving_any_input_slightly_moves_the_belief_slightly(made, which):
    kind, numbers, text = made
    nudged = list(numbers)
    nudged[which % len(numbers)] += NUDGE
    observation = next(o for o in MEASURED if o.measurement.kind == kind)
    one, other = (infer_belief(MODEL, {"complaint": "no-heat", observation.id: text(v)}) for v in (numbers, nudged))
    assert one.probabilities == pytest.approx(other.probabilities, abs=SLIGHTLY)


@pytest.mark.parametrize("observation", MEASURED, ids=lambda o: o.id)
def test_an_answer_in_words_weighs_as_its_column_of_the_table(observation):
    for place_of, option in enumerate(observation.options):
        assert level_likelihood(observation, option) == tuple(row[place_of] for row in observation.answer_probabilities)


def test_a_sharp_reading_well_inside_a_span_weighs_as_that_answer():
    meter = PACK.observations["meter-off"]
    in_words, measured = level_likelihood(meter, "no-draw-when-off"), level_likelihood(meter, "i200~j210")
    assert measured == pytest.approx(in_words, rel=1e-3)


@pytest.mark.parametrize("kind", sorted(READERS))
def test_every_kind_is_used_and_yields_the_quantities_it_is_said_to(kind):
    texts = {
        "meter": NO_POWER,
        "thermometer": "c180~r30-180",
        "run-on": "h5",
        "preheat": "m10~c200",
        "gasket": "pgggggggg",
    }
    result = READERS[kind](texts[kind])
    if kind == "gasket":
        assert len(result.leaks) == len(SEAL_PLACES)
    else:
        assert set(result.quantities) == set(QUANTITIES[kind])
    assert any(o.measurement.kind == kind for o in MEASURED)


def test_a_question_in_words_only_knows_no_reading():
    lamp = PACK.observations["lamp-state"]
    assert invalid_reason(lamp, NO_POWER) == "not-an-option"
    assert invalid_reason(lamp, CANT_TELL) is None
    assert flags_raised_by(lamp, NO_POWER) == ()


@pytest.mark.parametrize(
    ("text", "flags"),
    [("i200~j260", ()), ("i200~j600", ()), ("i200~j690", ("will-not-stop",)), ("i200~j9000", ("will-not-stop",))],
)
def test_power_drawn_when_off_is_flagged_one_uncertainty_early_and_however_much_it_is(text, flags):
    assert flags_raised_by(PACK.observations["meter-off"], text) == flags


def test_the_outer_spans_have_no_end_for_a_flag():
    gauge = PACK.observations["meter-off"].measurement
    assert gauge.open_interval("draws-when-off") == (500.0, inf)
    assert gauge.open_interval("no-draw-when-off") == (-inf, 500.0)
    assert PACK.observations["fan-run-on"].measurement.open_interval("never-stops")[1] > ENDLESS_MINUTES


def test_a_flagged_reading_ends_the_check_as_its_answer_in_words_does():
    region = place("gb-eng")
    for told in ("keeps-climbing", "c180~r5-100_10-180_15-235"):
        step = run_check(PACK, region, [("complaint", "too-hot"), ("danger", "none"), ("thermometer-swing", told)]).step
        assert isinstance(step, Emergency)
        assert [flag.id for flag in step.flags] == ["overheats"]


def test_no_power_on_the_setting_that_fails_and_full_power_on_the_grill_settles_an_open_element():
    """The light calls for heat and none comes; before the readings the check goes on, with them it is over."""
    region = place("gb-eng")
    before = run_check(PACK, region, LIGHT_STAYS_ON).step
    after = run_check(PACK, region, [*LIGHT_STAYS_ON, ("meter-power", NO_POWER), ("meter-grill", FULL_POWER)]).step
    both_dead = run_check(PACK, region, [*LIGHT_STAYS_ON, ("meter-power", NO_POWER), ("meter-grill", NO_POWER)])
    assert isinstance(before, Question)
    assert isinstance(after, Result)
    assert after.verdict.causes[0].fault == "fan-element-open"
    assert after.verdict.causes[0].chance > 0.9
    assert isinstance(both_dead.step, Question)
    assert both_dead.belief.faults["fan-element-open"] < 0.4


def test_each_reading_has_a_weight_of_its_own_in_the_verdict():
    step = run_check(
        PACK, place("gb-eng"), [*LIGHT_STAYS_ON, ("meter-power", NO_POWER), ("meter-grill", FULL_POWER)]
    ).step
    weights = {weight.observation: weight.decibans for weight in step.verdict.causes[0].weights}
    assert weights["meter-power"] > 0.5
    assert weights["meter-grill"] > 0.5


def test_a_reading_may_be_forged_and_the_rest_is_kept():
    reading = parse_answers(PACK, [("complaint", "no-heat"), ("meter-power", "f21~s0~k1000"), ("lamp-state", "i1~j2")])
    assert dict(reading.answers) == {"complaint": "no-heat"}
    assert [(p.kind, p.observation, p.detail) for p in reading.problems] == [
        ("unreadable-reading", "meter-power", "too-small"),
        ("unknown-answer", "lamp-state", ""),
    ]


@some
@given(
    pairs=strategies.lists(
        strategies.tuples(
            strategies.sampled_from([o.id for o in MEASURED]),
            strategies.one_of(
                strategies.text(max_size=30), strategies.from_regex(r"[a-z][0-9._~a-z-]{1,30}", fullmatch=True)
            ),
        ),
        max_size=6,
    )
)
def test_whatever_a_forger_sends_a_step_comes_of_it(pairs):
    check = run_check(PACK, place("gb-eng"), [("complaint", "no-heat"), ("danger", "none"), *pairs])
    assert check.step
    assert {p.kind for p in check.problems} <= {"unreadable-reading", "contradiction", "out-of-place"}
    again = parse_answers(PACK, check.answers.items())
    assert again.answers == check.answers


def test_two_different_readings_of_one_thing_are_asked_again_unless_one_is_a_danger():
    plain = parse_answers(PACK, [("meter-power", NO_POWER), ("meter-power", FULL_POWER)])
    assert (dict(plain.answers), plain.problems[0].kind) == ({}, "contradiction")
    danger = parse_answers(PACK, [("meter-off", "i200~j210"), ("meter-off", "i200~j2000")])
    assert danger.answers == {"meter-off": "i200~j2000"}


def test_the_options_of_a_reading_come_in_the_order_of_the_question():
    for observation, text in (("thermometer-swing", "c180~r30-180_40-190"), ("paper-strip-test", "pgsgggggg")):
        told = option_likelihoods(PACK.observations[observation], text)
        assert tuple(told) == PACK.observations[observation].options
        assert sum(told.values()) == pytest.approx(1.0)
