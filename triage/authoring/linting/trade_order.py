"""Call rates that leave the order in which the trade meets the faults.

The order stands in `trade_order.yaml` of the pack folder, with where it comes from; a pack may have none. It is a
judgement and outcomes may rightly overrule it, so leaving it is a remark.
"""

from collections.abc import Sequence
from itertools import chain

from triage.authoring.linting.finding import Gravity, LintFinding, PackSource
from triage.engine.pack import Fault, Pack
from triage.knowledge.entry import Entry
from triage.knowledge.problems import PackProblem, PackProblems
from triage.knowledge.yaml_reader import read_yaml

NAME = "trade_order"

Groups = Sequence[tuple[str, ...]]


def out_of_order(pack: Pack, places: PackSource) -> list[LintFinding]:
    """A remark for each fault that is rarer than one the trade meets less, or has no place in the order. Raises
    PackProblems when the order itself cannot be read."""
    groups = read_order(pack, places)
    if not groups:
        return []
    found = [_remark(places, fault, rival) for fault, rival in _inversions(pack, groups)]
    placed = set(chain.from_iterable(groups))
    for fault in pack.faults.values():
        if fault.id not in placed and fault.kind != "other":
            what, remedy = f"has no place in {NAME}.yaml.", "Put it into the group of faults that are met as often."
            found.append(LintFinding(Gravity.REMARK, "trade order", places.problem("faults", fault.id, what, remedy)))
    return found


def read_order(pack: Pack, places: PackSource) -> Groups:
    """The groups of the order, the most frequent first; none when the pack states no order."""
    path = places.folder / f"{NAME}.yaml"
    if not path.is_file():
        return ()
    problems: list[PackProblem] = []
    shown = f"{places.folder.name}/{NAME}.yaml"
    fields = read_yaml(path, shown, problems)
    if fields is None:
        raise PackProblems(problems)
    top = Entry(shown, NAME, fields, problems)
    top.text("provenance")
    top.used.add("order")
    groups = _groups(top, pack)
    top.close()
    if problems:
        raise PackProblems(problems)
    return groups


def _groups(top: Entry, pack: Pack) -> Groups:
    order = top.fields.get("order")
    if not isinstance(order, list) or not order or not all(isinstance(group, list) for group in order):
        top.report("order", "must be a list of lists of faults.", "Start each group with `- [one, two]`.")
        return ()
    known = list(pack.faults)
    groups = [tuple(f for f in g if top.is_id("order", f) and top.is_known("order", f, known)) for g in order]
    named = list(chain.from_iterable(groups))
    for fault in dict.fromkeys(named):
        if named.count(fault) > 1:
            top.report("order", f"names {fault!r} twice.", "Keep one of them.")
    return groups


def _inversions(pack: Pack, groups: Groups) -> list[tuple[Fault, Fault]]:
    """Each fault that is rarer than some fault of a later group, with the most frequent of those."""
    found = []
    for place, group in enumerate(groups):
        later = [pack.faults[f] for f in chain.from_iterable(groups[place + 1 :])]
        rival = max(later, key=lambda fault: fault.calls_per_1000, default=None)
        if rival is not None:
            found += [(pack.faults[f], rival) for f in group if pack.faults[f].calls_per_1000 < rival.calls_per_1000]
    return found


def _remark(places: PackSource, fault: Fault, rival: Fault) -> LintFinding:
    return LintFinding(
        Gravity.REMARK,
        "trade order",
        places.problem(
            "faults",
            fault.id,
            f"is called out for {fault.calls_per_1000:g} times in 1000 and {rival.id} {rival.calls_per_1000:g} times; "
            f"the trade meets {fault.id} at least as often.",
            f"Correct `calls_per_1000`, or move one of them in {NAME}.yaml and say there why.",
        ),
    )
