"""What tests are built from: a pack of a few made-up faults, whole and small enough to work out by hand.

Add to the end of this file; what stands here is used by many tests. `make_pack(limits=...)` changes one part.
"""

from dataclasses import replace
from functools import cache
from pathlib import Path

import triage.knowledge
from triage.engine.pack import (
    Band,
    Complaint,
    Condition,
    Effect,
    Fault,
    FaultPair,
    Level,
    Limits,
    Observation,
    Pack,
    RedFlag,
    Region,
    Task,
    Variant,
)
from triage.knowledge.pack_builder import build_pack

ANYWHERE = Region("anywhere")
ELECTRIC_OVEN = Path(triage.knowledge.__file__).parent / "packs" / "electric_oven"


def make_fault(name, **changes):
    fault = Fault(name, "fault", name, Band.QUALIFIED, 20.0, "technician", "leave-off")
    return replace(fault, **changes)


def make_observation(name, options, **changes):
    return replace(Observation(name, tuple(options), "memory", 10.0, "front"), **changes)


def make_flag(name, level, rank, **changes):
    return replace(RedFlag(name, level, rank, "DANGER", "any", "technician"), **changes)


def make_task(name, **changes):
    nothing = frozenset()
    task = Task(
        id=name,
        competence="ordinary",
        helps=nothing,
        cures=nothing,
        unsafe_with=nothing,
        not_after=nothing,
        gates=(),
        needs_heat=False,
        minutes=5.0,
        picture="front",
        outcome=f"did-{name}",
    )
    return replace(task, **changes)


def by_id(*parts):
    return {part.id: part for part in parts}


VARIANTS = by_id(
    Variant("control", ("mechanical", "electronic"), (0.6, 0.4)),
    Variant("element-view", ("visible", "hidden"), (0.5, 0.5)),
)
CONDITIONS = by_id(
    Condition("trouble", ("odd", "slow", "cold", "dead"), (0.4, 0.2, 0.3, 0.1)),
    Condition("heat", ("full", "half", "none"), (0.9, 0.08, 0.02), parent="control"),
    Condition(
        "display",
        ("time", "code"),
        (0.95, 0.05),
        parent="control",
        allowed_on={"code": frozenset({"electronic"})},
    ),
    Condition("arcing", ("none", "arc"), (0.998, 0.002)),
    Condition("lamp", ("lit", "dark"), (0.95, 0.05)),
    Condition("cured-by-set-clock", ("no", "yes"), (0.99, 0.01)),
)
FAULTS = by_id(
    make_fault(
        "element-open",
        family="element",
        calls_per_1000=50.0,
        effects=(
            Effect("trouble", (0.05, 0.3, 0.6, 0.05)),
            Effect("heat", (0.1, 0.7, 0.2), when=frozenset({"electronic"})),
            Effect("heat", (0.05, 0.15, 0.8)),
        ),
    ),
    make_fault(
        "element-arcing",
        family="element",
        band=Band.MAKE_SAFE,
        calls_per_1000=5.0,
        effects=(
            Effect("trouble", (0.5, 0.1, 0.3, 0.1)),
            Effect("heat", (0.4, 0.2, 0.4)),
            Effect("arcing", (0.05, 0.95)),
        ),
    ),
    make_fault(
        "board-dead",
        family="control",
        calls_per_1000=30.0,
        requires_variant={"control": frozenset({"electronic"})},
        effects=(
            Effect("trouble", (0.1, 0.1, 0.3, 0.5)),
            Effect("heat", (0.1, 0.1, 0.8)),
            Effect("display", (0.3, 0.7)),
        ),
    ),
    make_fault(
        "thermostat-drifted",
        family="temperature",
        requires_variant={"control": frozenset({"mechanical"})},
        effects=(Effect("trouble", (0.3, 0.6, 0.05, 0.05)), Effect("heat", (0.4, 0.6, 0.0))),
    ),
    make_fault(
        "programmer-not-set",
        kind="user",
        family="settings",
        band=Band.SELF_CHECK,
        calls_per_1000=10.0,
        online_ratio=2.0,
        rate_multipliers={"control": {"electronic": 2.0}},
        effects=(
            Effect("trouble", (0.05, 0.05, 0.6, 0.3)),
            Effect("heat", (0.02, 0.02, 0.96)),
            Effect("cured-by-set-clock", (0.2, 0.8)),
        ),
    ),
    make_fault(
        "lamp-failed",
        family="lamp",
        band=Band.SELF_CHECK,
        calls_per_1000=8.0,
        effects=(Effect("lamp", (0.02, 0.98)),),
    ),
    make_fault("normal-preheat", kind="normal", family="normal", band=Band.NORMAL, calls_per_1000=15.0),
    make_fault("other", kind="other", family="other", calls_per_1000=12.0, noise_share=0.3),
)
PAIRS = (FaultPair("element-open", "lamp-failed", 1.5), FaultPair("element-arcing", "board-dead", 2.0, causal=True))
OBSERVATIONS = by_id(
    make_observation(
        "complaint",
        ["nothing-right", "too-slow", "stays-cold", "is-dead"],
        reports="trouble",
        answer_probabilities=(
            (0.85, 0.05, 0.05, 0.05),
            (0.1, 0.7, 0.15, 0.05),
            (0.05, 0.1, 0.8, 0.05),
            (0.1, 0.1, 0.2, 0.6),
        ),
        effort_seconds=5.0,
    ),
    make_observation(
        "heats",
        ["normal", "less", "no-heat"],
        reports="heat",
        answer_probabilities=((0.9, 0.08, 0.02), (0.2, 0.7, 0.1), (0.01, 0.09, 0.9)),
    ),
    make_observation(
        "meter",
        ["as-rated", "low"],
        method="trial",
        effort_seconds=300.0,
        reports="heat",
        answer_probabilities=((0.95, 0.05), (0.3, 0.7), (0.02, 0.98)),
    ),
    make_observation(
        "screen-shows",
        ["clock-time", "letters"],
        method="look",
        reports="display",
        answer_probabilities=((0.98, 0.02), (0.05, 0.95)),
    ),
    make_observation(
        "code-stays",
        ["stays", "goes"],
        method="look",
        reports="display",
        answer_probabilities=((0.2, 0.8), (0.7, 0.3)),
        requires_variant={"control": frozenset({"electronic"})},
        requires_answers={"screen-shows": frozenset({"letters"})},
    ),
    make_observation(
        "dial-turns",
        ["turns", "slips"],
        method="look",
        requires_variant={"control": frozenset({"mechanical"})},
    ),
    make_observation(
        "sparks",
        ["no-sparks", "one-flash", "bright-spot"],
        reports="arcing",
        answer_probabilities=((0.98, 0.015, 0.005), (0.02, 0.28, 0.7)),
        flags={"one-flash": "caution-flash", "bright-spot": "arc-burning"},
    ),
    make_observation("shock", ["no-shock", "felt-one"], flags={"felt-one": "electric-shock"}),
    make_observation("pane", ["firm", "loose"], method="look", flags={"loose": "loose-pane"}),
    make_observation("lamp-state", ["works", "out"], reports="lamp", answer_probabilities=((0.97, 0.03), (0.05, 0.95))),
    make_observation("fuel", ["electric", "gas"]),
    make_observation(
        "control",
        ["mechanical", "electronic"],
        method="look",
        reports="control",
        answer_probabilities=((1.0, 0.0), (0.0, 1.0)),
    ),
    make_observation("cold", ["yes", "no", "unsure"], method="look"),
    make_observation("supply-off", ["yes", "no", "unsure"], method="look"),
    make_observation(
        "did-set-clock",
        ["fixed", "not-fixed"],
        method="trial",
        reports="cured-by-set-clock",
        answer_probabilities=((0.02, 0.98), (0.9, 0.1)),
        task="set-clock",
    ),
)
RED_FLAGS = by_id(
    make_flag("electric-shock", Level.EMERGENCY, 0, switches="never", signs=(("shock", "felt-one"),)),
    make_flag("arc-burning", Level.STOP, 1, signs=(("sparks", "bright-spot"),)),
    make_flag("caution-flash", Level.CAUTION, 2),
    make_flag("loose-pane", Level.CAUTION, 3, signal="CAUTION"),
)
TASKS = by_id(
    make_task(
        "set-clock",
        helps=frozenset({"programmer-not-set", "normal-preheat"}),
        cures=frozenset({"programmer-not-set"}),
        requires_variant={"control": frozenset({"electronic"})},
    ),
    make_task(
        "change-lamp",
        helps=frozenset({"lamp-failed"}),
        cures=frozenset({"lamp-failed"}),
        unsafe_with=frozenset({"element-arcing"}),
        not_after=frozenset({"loose-pane"}),
        gates=("cold", "supply-off"),
        minutes=9.0,
    ),
    make_task("heat-it", helps=frozenset({"normal-preheat", "thermostat-drifted"}), needs_heat=True, minutes=30.0),
    make_task("change-element", competence="skilled", helps=frozenset({"element-open"})),
)
PACK = Pack(
    id="small-oven",
    version="test-1",
    variants=VARIANTS,
    conditions=CONDITIONS,
    observations=OBSERVATIONS,
    faults=FAULTS,
    fault_pairs=PAIRS,
    red_flags=RED_FLAGS,
    tasks=TASKS,
    complaints=(Complaint("stays-cold", {"heats": "no-heat"}, "cavity"),),
    look_alikes=(frozenset({"element-open", "board-dead"}),),
    retired={"heats-well": "heats"},
    out_of_scope={("fuel", "gas"): "gas-oven"},
    limits=Limits(max_questions=6),
)


def make_pack(**changes):
    """The small pack, with the parts named in `changes` replaced."""
    return replace(PACK, **changes) if changes else PACK


@cache
def electric_oven():
    """The pack people use, built once for all tests."""
    return build_pack(ELECTRIC_OVEN)
