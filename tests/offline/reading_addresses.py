"""Forms of readings as people, browsers and forgers send them; the same ones in every run."""

from math import exp
from random import Random

from tests.household.checks_done import answers_of
from tests.offline.addresses import FORGED, query_of
from triage.check_pages.presenters.readings.form import measured_by
from triage.engine import Result, run_check
from triage.knowledge.library import library

# Two with Celsius, two with Fahrenheit, and every kind of supply there is.
REGIONS = ("gb-eng", "us", "de", "iec", "ca", "fr")
SENT = ("read-form", "1")
SCREENED = ("danger", "none")
WRONG = (
    *("abc", "1,200", "1.200", "-1", "-0", "99999999", "3.5", "0", "1e3", "12,5,6", ".5", "5.", "12 34", "é" * 30),
    *("１２", "<b>7</b>", "007", "0.1234567", "\ufeff5", "5\x1c", "\x85 6 ", "£8", "1'000", "\u20297", "%", "%(low)s"),
)
FIELDS = {
    "meter": {
        "impulses": ("1000", "500", "800", "10000", "007.50"),
        "taps": (
            "0 1.8 3.6 5.4 7.2 9",
            "0;2;4;6;9;21;23,5;25",
            "0.0_1.5_3.1_4.6",
            "0 1 1",
            "0 1 2 x 4",
            "0 1 2 3 14401",
        ),
        "flashes": ("35", "2", "1", "120"),
        "seconds": ("60", "30.5", "45,25", "1"),
        "before": ("12345.6", "12345", "12345.67"),
        "after": ("12346.1", "12345", "12346.125"),
        "minutes": ("15", "5", "60"),
        "idle": ("150", "120", "0"),
        "drawing": ("2275", "2350", "170", "1000", "900", "120"),
        "background": ("150", "0", "90.5"),
        "plate": ("2200", "2000", "1800"),
        "whole-plate": ("3500", "2900"),
        "rated-volts": ("230", "240"),
        "supply-volts": ("238", "219", "120"),
    },
    "thermometer": {
        "set": ("180", "200", "350", "160,5"),
        "tolerance": ("5", "10", "0.2"),
        "boiling": ("98", "103", "212"),
    },
    "run-on": {
        "heard": ("5", "12.25", "20", "0", "55", "180"),
        "stopped": ("10", "25", "61.5", "12.25", "400", "0"),
        "cold": ("1", "yes"),
        "much-heat": ("1",),
    },
    "preheat": {
        "minutes": ("12", "35", "8.5", "90", "240", "1.015625"),
        "set": ("200", "180", "392", "350,09"),
        "room": ("20", "68", "32.09"),
        "litres": ("65", "71", "35"),
        "waiting": ("1",),
        "plate": ("2200", "3000"),
        "whole-plate": ("3400",),
        "rated-volts": ("230",),
        "supply-volts": ("225",),
    },
    "gasket": {
        **dict.fromkeys(("top-left", "top", "top-right", "right", "bottom-right", "bottom", "left"), ("1",)),
        "no-bottom": ("1", "yes"),
    },
}
# The ways to take one; what stands beside them is thrown.
WAYS = {
    "meter": (
        ("impulses", "taps"),
        ("impulses", "flashes", "seconds"),
        ("before", "after", "minutes"),
        ("idle", "drawing"),
    ),
    "thermometer": (("set",),),
    "run-on": (("heard",), ("heard", "stopped"), ("stopped",), ("cold",)),
    "preheat": (("minutes", "set"), ("minutes", "set", "waiting")),
    "gasket": ((), ("top", "top-right"), ("left",)),
}
# Whole checks that between them offer every task with a reading.
CHECKS = (
    ("fan-element-open", "no-heat"),
    ("fan-element-open", "too-hot"),
    ("base-element-open", "no-heat"),
    ("thermostat-drifted", "no-heat"),
    ("probe-drifted", "fan-after"),
)


def pages_of_their_own(number, seed):
    """Each kind's own page: behind the danger signs, behind its gates, and with `number` forms a place."""
    dice = Random(seed)
    for region in REGIONS:
        for kind in FIELDS:
            task = next(iter(tasks_measuring(kind)))
            told = [("region", region), SCREENED, *((gate, "yes") for gate in task.gates)]
            yield address_of(kind, [("region", region)])
            yield address_of(kind, [("region", region), SCREENED])
            shut = [(gate, dice.choice(["no", "unsure"])) for gate in task.gates]
            yield address_of(kind, [("region", region), SCREENED, *shut])
            yield address_of(kind, told, whole=True)
            for _ in range(number):
                yield address_of(kind, [*told, SENT, *typed_into(kind, dice)], whole=dice.random() < 0.1)


def pages_of_tasks(number, seed):
    """The same forms on the pages of the tasks that a check offers."""
    dice = Random(seed)
    for region, told, task in offered_tasks():
        kind = measured_by(library().pack, task)[0].measurement.kind
        gates = [(gate, "yes") for gate in task.gates]
        for _ in range(number):
            query = query_of([("region", region), *told.items(), *gates, SENT, *typed_into(kind, dice)])
            yield f"/check/task/{task.id}/", query, dice.random() < 0.9, "en-GB"
        yield f"/check/task/{task.id}/", query_of([("region", region), *told.items(), *gates]), True, "en-GB"


def forged_forms():
    """What nobody's browser sends."""
    for kind in FIELDS:
        for query in FORGED:
            yield f"/reading/{kind}/", f"danger=none&read-form&{query}", True, "en-GB"
    for path in ("/reading/nothing/", "/reading/constructor/", "/reading/Meter/"):
        yield path, "danger=none", True, "en-GB"
        yield path, "", False, "en-GB"
    yield address_of("meter", [SCREENED, SENT, ("read-idle", "0"), ("read-drawing", "-0")])
    yield address_of("meter", [("region", "us"), SCREENED, ("smell", "plastic"), ("trips", "at-once")])


def offered_tasks():
    """The tasks with a reading that those checks offer in each place."""
    pack = library().pack
    for region in REGIONS:
        for fault, complaint in CHECKS:
            told = answers_of(fault, complaint, region)
            step = run_check(pack, library().regions[region].region, told.items()).step
            for task in step.tasks if isinstance(step, Result) else ():
                if measured_by(pack, task):
                    yield region, told, task


def tasks_measuring(kind):
    pack = library().pack
    for task in pack.tasks.values():
        measured = measured_by(pack, task)
        if measured and measured[0].measurement.kind == kind:
            yield task


def typed_into(kind, dice):
    """One form: mostly one way of taking it, some of the rest, at times something wrong."""
    named = dict.fromkeys(dice.choice(WAYS[kind]))
    named |= dict.fromkeys(name for name in FIELDS[kind] if dice.random() < 0.12)
    typed = [(f"read-{name}", dice.choice(FIELDS[kind][name])) for name in named]
    if kind == "thermometer":
        typed += rows_of_readings(dice)
    if typed and dice.random() < 0.25:
        at = dice.randrange(len(typed))
        typed[at] = (typed[at][0], dice.choice(WRONG))
    if dice.random() < 0.3:
        typed.append(("read-for", dice.choice(["meter-grill", "meter-power", "torch-gap-test", "x"])))
    return typed


def rows_of_readings(dice):
    """Readings of an oven that goes up and down, or only warms up, some rows with a gap in them."""
    number, warm = dice.choice([1, 2, 4, 8, 14, 40, 60, 61]), dice.choice([150, 170, 175, 340])
    start, every = dice.choice([0, 5, 20.5, 30]), dice.choice([3, 5, 7.5])
    climbing, whole = dice.random() < 0.4, 1.0 if dice.random() < 0.5 else 0.97
    end = warm + dice.choice([-20, 70])
    for n in range(1, number + 1):
        time = start + every * n
        shown = end - (end - 20) * exp(-time / 18) if climbing else warm + dice.randint(-14, 30)
        if dice.random() < whole:
            yield f"read-time-{n}", f"{time:g}"
        if dice.random() < whole:
            yield f"read-shown-{n}", f"{shown:.0f}"


def address_of(kind, pairs, *, whole=False):
    return f"/reading/{kind}/", query_of(pairs), not whole, "en-GB"
