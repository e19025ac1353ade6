"""A pack folder to one `engine.Pack`; refuses the whole folder with every mistake in it."""

import hashlib
from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from triage.engine.pack import OPENING, Complaint, Condition, Fault, Limits, Observation, Pack, Task
from triage.knowledge.build_conditions import build_conditions, build_variants
from triage.knowledge.build_costs import build_costs
from triage.knowledge.build_faults import build_faults, build_pairs, read_rate_multipliers
from triage.knowledge.build_observations import (
    build_observations,
    gate_questions,
    listed_options,
    task_outcome,
    variant_questions,
)
from triage.knowledge.build_parts import build_jobs, build_parts
from triage.knowledge.build_safety import build_red_flags, build_tasks, check_signs, cure_condition, cure_effect
from triage.knowledge.entry import Entry
from triage.knowledge.overlay_file import FOLDER as OVERLAYS
from triage.knowledge.overlay_file import newest_overlay, with_overlay
from triage.knowledge.problems import PackProblem, PackProblems
from triage.knowledge.yaml_reader import LocatedDict, read_yaml

FILES = (
    "pack",
    "variants",
    "conditions",
    "faults",
    "observations",
    "red_flags",
    "tasks",
    "complaints",
    "parts",
    "costs",
)


@dataclass(frozen=True, slots=True)
class _Source:
    """The files of one pack folder, read."""

    folder: Path
    files: dict[str, LocatedDict]
    problems: list[PackProblem]

    def shown(self, name: str) -> str:
        return f"{self.folder.name}/{name}.yaml"


def build_pack(folder: Path) -> Pack:
    """The pack in `folder`, with its newest accepted overlay. Raises PackProblems with everything that is wrong."""
    return overlaid(build_written(folder), folder)


def overlaid(written: Pack, folder: Path, overlay: Path | None = None) -> Pack:
    """The pack with an overlay over it: the one given, else the newest of the folder, else itself."""
    overlay = overlay or newest_overlay(folder / OVERLAYS)
    return with_overlay(written, rules_hash(folder), overlay) if overlay else written


def build_written(folder: Path) -> Pack:
    """The pack as its authors wrote it, whatever was learnt since. Raises PackProblems."""
    problems: list[PackProblem] = []
    files = {name: read_yaml(folder / f"{name}.yaml", f"{folder.name}/{name}.yaml", problems) for name in FILES}
    if None in files.values():
        raise PackProblems(problems)
    source = _Source(folder, {name: fields for name, fields in files.items() if fields is not None}, problems)
    pack = _assemble(source)
    if problems:
        raise PackProblems(problems)
    return pack


def _assemble(source: _Source) -> Pack:
    files, problems = source.files, source.problems
    top = Entry(source.shown("pack"), "pack", files["pack"], problems)
    variants = build_variants(source.shown("variants"), files["variants"], problems)
    conditions = build_conditions(source.shown("conditions"), files["conditions"], variants, problems)
    multipliers = read_rate_multipliers(top, list(files["faults"]), variants)
    faults = build_faults(source.shown("faults"), files["faults"], conditions, variants, multipliers, problems)
    listed = listed_options(files["observations"])
    red_flags = build_red_flags(source.shown("red_flags"), files["red_flags"], listed, problems)
    shown = source.shown("observations")
    observations = build_observations(shown, files["observations"], conditions, variants, red_flags, problems)
    check_signs(source.shown("red_flags"), files["red_flags"], red_flags, observations, problems)
    observations |= variant_questions(source.shown("variants"), files["variants"], variants, observations, problems)
    observations |= gate_questions()
    tasks = build_tasks(source.shown("tasks"), files["tasks"], faults, red_flags, variants, observations, problems)
    _add_cures(tasks, conditions, observations, faults)
    parts = build_parts(source.shown("parts"), files["parts"], problems)
    pack = Pack(
        id=source.folder.name.replace("_", "-"),
        version=f"{top.text('version')}-{content_hash(source.folder)}",
        variants=variants,
        conditions=conditions,
        observations=observations,
        faults=faults,
        fault_pairs=build_pairs(top, faults),
        red_flags=red_flags,
        tasks=tasks,
        complaints=_complaints(source, observations),
        look_alikes=_look_alikes(top, list(faults)),
        retired=_retired(top, observations),
        out_of_scope=_out_of_scope(top, observations),
        limits=_limits(top),
        parts=parts,
        jobs=build_jobs(source.shown("parts"), files["parts"], parts, faults, problems),
        costs=build_costs(source.shown("costs"), files["costs"], faults, problems),
    )
    top.text("name")
    top.close()
    return pack


def _add_cures(
    tasks: dict[str, Task],
    conditions: dict[str, Condition],
    observations: dict[str, Observation],
    faults: dict[str, Fault],
) -> None:
    """For every task whose outcome is no question yet: the question, what it reports, and the faults it shows on."""
    for task in (task for task in tasks.values() if task.outcome not in observations):
        conditions[f"cured-by-{task.id}"] = cure_condition(task)
        observations[task.outcome] = task_outcome(task.id, f"cured-by-{task.id}", task.picture)
        for fault in task.cures:
            faults[fault] = replace(faults[fault], effects=(*faults[fault].effects, cure_effect(task)))


def content_hash(folder: Path) -> str:
    """Eight hex digits over every file the authors wrote: the same pack has the same version everywhere."""
    return _hash_of(folder, (path for path in folder.rglob("*.yaml") if not path.is_relative_to(folder / OVERLAYS)))


def rules_hash(folder: Path) -> str:
    """Eight hex digits over what the engine reasons with: a text may be corrected without it changing."""
    return _hash_of(folder, (folder / f"{name}.yaml" for name in FILES))


def _hash_of(folder: Path, paths: Iterable[Path]) -> str:
    digest = hashlib.sha256()
    for path in sorted(paths):
        digest.update(str(path.relative_to(folder)).encode() + b"\0" + path.read_bytes())
    return digest.hexdigest()[:8]


def _complaints(source: _Source, observations: dict[str, Observation]) -> tuple[Complaint, ...]:
    top = Entry(source.shown("complaints"), "complaints", source.files["complaints"], source.problems)
    opening = observations.get(OPENING)
    if opening is None:
        top.report("complaints", f"answer a question {OPENING!r} that is not there.", "Add it to observations.yaml.")
    found = []
    for item in top.items("complaints"):
        given = {
            o: answers.choice(o, observations[o].options)
            for o, answers in item.names("answers")
            if answers.is_known(o, o, list(observations))
        }
        option = item.choice("option", opening.options) if opening else item.text("option")
        found.append(Complaint(option, given, item.text("picture")))
        item.close()
    top.close()
    return tuple(found)


def _look_alikes(top: Entry, faults: list[str]) -> tuple[frozenset[str], ...]:
    top.used.add("look_alikes")
    groups = top.fields.get("look_alikes", [])
    if not isinstance(groups, list) or not all(isinstance(group, list) for group in groups):
        top.report("look_alikes", f"must be a list of lists, not {groups!r}.", "Start each group with `- [one, two]`.")
        return ()
    return tuple(
        frozenset(
            fault for fault in group if top.is_id("look_alikes", fault) and top.is_known("look_alikes", fault, faults)
        )
        for group in groups
    )


def _retired(top: Entry, observations: dict[str, Observation]) -> dict[str, str]:
    retired = {}
    for name, below in top.names("retired"):
        retired[name] = below.text(name)
        if name in observations:
            below.report(name, "is still in use.", "Retire an id only once it is gone.")
    return retired


def _out_of_scope(top: Entry, observations: dict[str, Observation]) -> dict[tuple[str, str], str]:
    reasons = {}
    options = {observation.id: observation.options for observation in observations.values()}
    for item in top.items("out_of_scope", required=False):
        answer, leads_to = item.answer(options), item.text("reason")
        if answer is not None:
            reasons[answer] = leads_to
        item.close()
    return reasons


def _limits(top: Entry) -> Limits:
    below = top.below("limits", required=True)
    if below is None:
        return Limits()
    limits = Limits(
        max_questions=int(below.number("max_questions", 1, 40)),
        stop_probability=below.number("stop_probability", 0.5, 1.0),
        min_bits=below.number("min_bits", 0.0, 1.0),
        plausible_probability=below.number("plausible_probability", 0.0, 0.2),
        relevant_probability=below.number("relevant_probability", 0.0, 0.5, 0.0),
    )
    below.close()
    return limits
