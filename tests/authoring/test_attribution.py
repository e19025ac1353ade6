"""Each change is tried alone on the old pack, as long as it can stand alone."""

from dataclasses import replace

from tests.builders import CONDITIONS, FAULTS, OBSERVATIONS, PAIRS, TASKS, by_id, electric_oven, make_fault, make_pack
from triage.authoring.attribution import MAX_TRIALS, TOGETHER, is_consistent, trials, with_changes
from triage.authoring.pack_changes import changes
from triage.engine.pack import Condition, Effect

OLD = make_pack()


def tried(new):
    return {trial.name: trial.pack for trial in trials(OLD, new, changes(OLD, new))}


def test_a_pack_with_all_changes_made_is_the_new_pack():
    rarer = replace(FAULTS["element-open"], calls_per_1000=5.0, effects=FAULTS["element-open"].effects[:1])
    faults = {name: fault for name, fault in FAULTS.items() if name != "lamp-failed"} | by_id(rarer)
    new = make_pack(
        faults=faults | by_id(make_fault("hinge-worn", effects=(Effect("lamp", (0.3, 0.7)),))),
        observations=OBSERVATIONS | by_id(replace(OBSERVATIONS["heats"], effort_seconds=5.0)),
        fault_pairs=PAIRS[1:],
        tasks={name: task for name, task in TASKS.items() if name != "change-lamp"},
    )
    assert changes(with_changes(OLD, new, changes(OLD, new)), new) == ()


def test_each_change_is_made_alone_and_touches_nothing_else():
    rarer = replace(FAULTS["element-open"], calls_per_1000=5.0, effects=FAULTS["element-open"].effects[:1])
    new = make_pack(faults=FAULTS | by_id(rarer))
    found = tried(new)
    assert list(found) == ["fault element-open", "effect element-open on heat"]
    for name, pack in found.items():
        assert [change.label for change in changes(OLD, pack)] == [name]


def test_the_pairs_of_a_fault_go_with_it():
    rarer = replace(FAULTS["element-open"], calls_per_1000=5.0)
    new = make_pack(faults=FAULTS | by_id(rarer), fault_pairs=(replace(PAIRS[0], rate_per_1000=0.1), PAIRS[1]))
    assert {pair.rate_per_1000 for pair in tried(new)["fault element-open"].fault_pairs} == {0.1, 2.0}


def test_what_cannot_stand_alone_is_tried_together():
    smoke = Condition("smoke", ("none", "some"), (0.9, 0.1))
    seen = replace(OBSERVATIONS["lamp-state"], id="smoke-seen", reports="smoke")
    smoky = replace(FAULTS["element-open"], effects=(*FAULTS["element-open"].effects, Effect("smoke", (0.2, 0.8))))
    new = make_pack(
        conditions=CONDITIONS | by_id(smoke),
        observations=OBSERVATIONS | by_id(seen),
        faults=FAULTS | by_id(smoky),
    )
    found = tried(new)
    assert list(found) == ["condition smoke", TOGETHER]
    assert changes(found[TOGETHER], new) == ()


def test_too_many_changes_are_tried_part_by_part():
    slower = {o.id: replace(o, effort_seconds=o.effort_seconds + 1.0) for o in OBSERVATIONS.values()}
    dearer = {f.id: replace(f, calls_per_1000=f.calls_per_1000 + 1.0) for f in FAULTS.values()}
    more = {f"n-{n}": make_fault(f"n-{n}") for n in range(MAX_TRIALS)}
    found = tried(make_pack(observations=slower, faults=dearer | more))
    assert list(found) == ["all changes of observations", "all changes of faults"]


def test_a_whole_pack_holds_together_and_one_that_lacks_a_part_does_not():
    assert is_consistent(OLD)
    assert is_consistent(electric_oven())
    lacking = [
        {"conditions": {name: c for name, c in CONDITIONS.items() if name != "lamp"}},
        {"faults": {name: f for name, f in FAULTS.items() if name != "lamp-failed"}},
        {"red_flags": {}},
        {"variants": {}},
        {"conditions": CONDITIONS | by_id(replace(CONDITIONS["lamp"], levels=("a", "b", "c")))},
        {"observations": {name: o for name, o in OBSERVATIONS.items() if name != "screen-shows"}},
        {"tasks": TASKS | by_id(replace(TASKS["set-clock"], not_after=frozenset({"rain"})))},
    ]
    assert [is_consistent(make_pack(**parts)) for parts in lacking] == [False] * len(lacking)
