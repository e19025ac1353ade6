"""Readings as trails carry them: what people could have measured, and what nobody could."""

from triage.engine.readings import gasket, meter, preheat, run_on, thermometer

TABLES = {
    "meter": meter.METER_FIELDS,
    "preheat": preheat.PREHEAT_FIELDS,
    "run-on": run_on.RUN_ON_FIELDS,
    "thermometer": thermometer.THERMOMETER_FIELDS,
}
METER_WAYS = (*meter.METHODS, ("idle", "drawing", "plate"), ("taps", "impulses", "background", "supply-volts"))
PREHEAT_WAYS = (("minutes", "set"), ("minutes", "set", "room", "litres", "plate"), ("minutes", "set", "waiting"))
RUN_ON_WAYS = (("heard",), ("heard", "stopped"), ("heard", "cold"), ("heard", "stopped", "much-heat"))
WAYS = {"meter": METER_WAYS, "preheat": PREHEAT_WAYS, "run-on": RUN_ON_WAYS}
# Where people's numbers lie, within the wider limits of what can be read.
USUAL = {
    "flashes": (5, 200),
    "seconds": (30, 900),
    "impulses": (500, 4000),
    "before": (100, 200),
    "after": (200, 202),
    "minutes": (3, 60),
    "drawing": (0, 4000),
    "idle": (50, 500),
    "heard": (0, 90),
    "stopped": (30, 120),
    "set": (150, 220),
}
SPOILED = (
    "",
    "p",
    "~",
    "0",
    "f",
    "c180~r",
    "f1e5~s3",
    "w1~m5",
    "p" + "x" * 8,
    "c180~r5-20_5-30",
    "é",
    "s-1~h3",
    "__proto__",
)


def written_reading(kind, dice):
    """A reading of this kind; about one in six is spoiled."""
    text = _seal(dice) if kind == "gasket" else _temperatures(dice) if kind == "thermometer" else _fields(kind, dice)
    if dice.random() < 0.12:
        place = dice.randrange(len(text) + 1)
        text = text[:place] + dice.choice("a~9_-,.Zé") + text[place + dice.randrange(2) :]
    return dice.choice(SPOILED) if dice.random() < 0.05 else text


def _seal(dice):
    leaky = dice.random()
    return "p" + "".join(
        dice.choice("gs") if dice.random() < leaky else dice.choice("gggx") for _ in gasket.SEAL_PLACES
    )


def _temperatures(dice):
    """A warming and a swing about some middle, read every few minutes."""
    middle, swing, time, readings = dice.randint(120, 260), dice.choice([2, 15, 40]), 0, []
    for _ in range(dice.randint(1, 14)):
        time += dice.randint(1, 9)
        value = middle * min(time / 18, 1) + dice.uniform(-swing, swing)
        readings.append(f"{time}-{max(value, 0):.{dice.randint(0, 1)}f}")
    more = dice.choice(["", "", "~a5", "~b98", "~a5,5~b103"])
    return f"c{dice.randint(150, 220)}~r{'_'.join(readings)}{more}"


def _fields(kind, dice):
    table, way = TABLES[kind], dice.choice(WAYS[kind])
    return "~".join(table[name].letter + _value(table[name], name, dice) for name in way)


def _value(field, name, dice):
    if name == "taps":
        at, taps = 0.0, []
        for _ in range(dice.randint(3, 12)):
            at += dice.uniform(1.0, 4.0) if dice.random() < 0.9 else 60.0
            taps.append(f"{at:.2f}")
        return "_".join(taps)
    low, high = USUAL.get(name, (field.low, field.high)) if dice.random() < 0.9 else (field.low, field.high)
    return (
        str(round(dice.uniform(low, high))) if field.whole or dice.random() < 0.5 else f"{dice.uniform(low, high):.2f}"
    )
