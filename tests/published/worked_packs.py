"""Small packs that put published examples into the engine's own terms."""

from tests.builders import ANYWHERE, by_id, make_fault
from triage.engine import Pack, compile_model
from triage.engine.pack import Condition, Limits

YES_NO = ("yes", "no")


def worked_model(faults, conditions=(), observations=(), variants=(), pairs=(), tasks=()):
    """The compiled model of a pack with these parts and nothing else."""
    return compile_model(worked_pack(faults, conditions, observations, variants, pairs, tasks), ANYWHERE)


def worked_pack(faults, conditions=(), observations=(), variants=(), pairs=(), tasks=()):
    return Pack(
        id="worked-example",
        version="1",
        variants=by_id(*variants),
        conditions=by_id(*conditions),
        observations=by_id(*observations),
        faults=by_id(*faults),
        fault_pairs=tuple(pairs),
        red_flags={},
        tasks=by_id(*tasks),
        limits=Limits(plausible_probability=0.0),
    )


def cause(name, chance, **changes):
    """A hypothesis with this prior (the priors of one example sum to one)."""
    return make_fault(name, calls_per_1000=chance, **changes)


def switch(name, chance_when_sound=0.0):
    """A condition that is there or not, with its chance when no cause speaks about it."""
    return Condition(name, ("no", "yes"), (1.0 - chance_when_sound, chance_when_sound))


def chance_of(belief, *faults):
    """The chance that one of `faults` is present; for examples whose faults exclude each other."""
    return sum(belief.faults[fault] for fault in faults)


def chance_of_level(belief, condition, level, hypothesis=None):
    """P(level and hypothesis | answers) for a condition nobody reported yet; all hypotheses by default."""
    model = belief.model
    (table,) = model.level_tables[condition]
    place = model.pack.conditions[condition].levels.index(level)
    rows = zip(model.hypotheses, belief.probabilities, table.index, strict=True)
    wanted = [(chance, i) for h, chance, i in rows if hypothesis in (None, "+".join(h.faults))]
    return sum(chance * table.distinct[i][place] for chance, i in wanted)
