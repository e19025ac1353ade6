"""Parts and tools a repairer may bring, and what finishing each fault takes."""

from collections.abc import Mapping

from triage.engine.enums import PriceClass
from triage.engine.frequency import FREQUENCIES, distribution, in_order
from triage.engine.pack import Fault
from triage.engine.repairs import Job, Part
from triage.knowledge.build_conditions import read_frequencies
from triage.knowledge.entry import Entry
from triage.knowledge.problems import PackProblem
from triage.knowledge.yaml_reader import LocatedDict


def build_parts(file: str, fields: LocatedDict, problems: list[PackProblem]) -> dict[str, Part]:
    """Every part and tool, with the number its way of being carried stands for."""
    top = Entry(file, "file", fields, problems)
    carrying_costs = {name: below.number(name, 0.0, 1.0) for name, below in top.names("carrying_costs", required=True)}
    parts = {}
    for name, below in top.names("parts", required=True):
        entry = below.below(name, required=True) if below.is_id(name, name) else None
        if entry is not None:
            cost = carrying_costs.get(entry.choice("carrying", carrying_costs), 0.0)
            parts[name] = Part(name, entry.flag("tool", False), cost)
            entry.close()
    top.used.add("jobs")
    top.close()
    return parts


def build_jobs(
    file: str, fields: LocatedDict, parts: Mapping[str, Part], faults: Mapping[str, Fault], problems: list[PackProblem]
) -> dict[str, Job]:
    """The job of every fault that takes a part; a fault whose price class is no part needs none."""
    jobs = {}
    top = Entry(file, "jobs", fields, problems)
    for name, below in top.names("jobs", required=True):
        if below.is_known(name, name, list(faults)):
            entry = below.below(name, required=True)
            if entry is not None:
                jobs[name] = _job(entry, parts)
    for fault in faults.values():
        if fault.price_class != PriceClass.P0 and fault.id not in jobs:
            top.report("jobs", f"says nothing of {fault.id}.", "Say what it takes, or known: false.")
    return jobs


def _job(entry: Entry, parts: Mapping[str, Part]) -> Job:
    known = tuple(parts)
    one_of = read_frequencies(entry, "one_of", known) if entry.has("one_of") else {}
    may_need = read_frequencies(entry, "may_need", known) if entry.has("may_need") else {}
    job = Job(
        needs=frozenset(entry.ids("needs", known, ())),
        may_need={part: FREQUENCIES[word] for part, word in may_need.items()},
        one_of=dict(zip(one_of, distribution(in_order(one_of, one_of)), strict=True)),
        known=entry.flag("known", True),
    )
    entry.used |= {"one_of", "may_need"}
    if job.known and not (job.needs or job.may_need or job.one_of):
        entry.report("needs", "nothing is needed.", "Name a part, or write known: false.")
    entry.close()
    return job
