"""All texts of a pack in one language, checked against the pack: nothing missing, nothing left over.

A red flag must say what to do first and a task must have cautions, so that no page for either can be bare.
"""

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import TypeVar

from triage.engine.enums import SafetyGate, SignalWord
from triage.engine.pack import Pack
from triage.knowledge.calls_review import check_calls
from triage.knowledge.entry import Entry, entries
from triage.knowledge.problems import PackProblem
from triage.knowledge.text_builder import build_named, build_shape, check_terms, read_lines
from triage.knowledge.texts import (
    ISO_SIGNS,
    CallsText,
    FamilyText,
    FaultText,
    FlagText,
    GateText,
    IsolationText,
    QuestionText,
    StartText,
    SupplyText,
    TaskText,
    Texts,
)
from triage.knowledge.yaml_reader import LocatedDict, read_yaml

SUPPLY = "supply"
UNKNOWN = "unknown"
FILES = ("observations", "faults", "families", "levels", "red_flags", "tasks", "isolation", "start", "parts", "calls")
BESIDE_SUPPLIES = ("always", "cooling", "other_sources", "back_on")

Shape = TypeVar("Shape")


class _Folder:
    """The text files of one language, read."""

    def __init__(self, folder: Path, problems: list[PackProblem]) -> None:
        self.language = folder.name
        self.problems = problems
        self.shown = {name: f"{folder.parent.parent.name}/text/{folder.name}/{name}.yaml" for name in FILES}
        self.files = {name: read_yaml(folder / f"{name}.yaml", self.shown[name], problems) for name in FILES}
        for name, fields in self.files.items():
            check_terms(self.shown[name], fields, problems)

    def fields(self, name: str) -> LocatedDict:
        return self.files[name] or LocatedDict(1)

    def entry(self, name: str) -> Entry:
        return Entry(self.shown[name], name, self.fields(name), self.problems)

    def named(self, name: str, shape: type[Shape], ids: Iterable[str]) -> dict[str, Shape]:
        return build_named(self.shown[name], self.fields(name), shape, ids, self.problems)


def build_texts(folder: Path, pack: Pack, problems: list[PackProblem]) -> Texts:
    """The texts in `folder` (text/<language>), every mistake added to `problems`."""
    read = _Folder(folder, problems)
    worded = [name for name, asked in pack.observations.items() if name not in set(SafetyGate) and not asked.task]
    gates, tasks = _tasks(read, pack)
    texts = Texts(
        language=folder.name,
        questions=read.named("observations", QuestionText, worded),
        faults=read.named("faults", FaultText, pack.faults),
        families=read.named("families", FamilyText, dict.fromkeys(f.family for f in pack.faults.values())),
        levels=_levels(read, pack),
        flags=read.named("red_flags", FlagText, pack.red_flags),
        gates=gates,
        tasks=tasks,
        isolation=_isolation(read, pack),
        start=build_shape(read.entry("start"), StartText),
        calls=build_shape(read.entry("calls"), CallsText),
        parts=_parts(read, pack),
    )
    _check_options(read, pack, texts)
    _check_start(read, pack, texts)
    _check_bare(read, texts)
    check_calls(read.shown["calls"], read.fields("calls"), pack, texts, problems)
    return texts


def _tasks(read: _Folder, pack: Pack) -> tuple[Mapping[str, GateText], Mapping[str, TaskText]]:
    """The gates under `gates:`, and every other entry as a task."""
    shown, fields = read.shown["tasks"], read.fields("tasks")
    gates = Entry(shown, "tasks", fields, read.problems).below("gates", required=True)
    used = [gate for gate in SafetyGate if any(gate in task.gates for task in pack.tasks.values())]
    return (
        build_named(shown, gates.fields if gates else LocatedDict(1), GateText, used, read.problems),
        build_named(shown, _without(fields, "gates"), TaskText, pack.tasks, read.problems),
    )


def _without(fields: LocatedDict, *names: str) -> LocatedDict:
    """The named entries of a file that are not among `names`."""
    left = LocatedDict(fields.line)
    for key, value in fields.items():
        if key not in names:
            left[key], left.lines[key] = value, fields.lines[key]
    return left


def _levels(read: _Folder, pack: Pack) -> Mapping[str, Mapping[str, str]]:
    levels = {}
    for name, entry in entries(read.shown["levels"], read.fields("levels"), read.problems):
        if entry.is_known(name, name, list(pack.conditions)):
            levels[name] = {level: entry.text(level) for level in pack.conditions[name].levels}
            entry.close()
    return levels


def _isolation(read: _Folder, pack: Pack) -> IsolationText:
    top = read.entry("isolation")
    wanted = [*pack.variants[SUPPLY].options, UNKNOWN] if SUPPLY in pack.variants else [UNKNOWN]
    supplies = _without(top.fields, *BESIDE_SUPPLIES)
    cooling = top.below("cooling", required=True)
    return IsolationText(
        always=read_lines(top, "always"),
        supplies=build_named(read.shown["isolation"], supplies, SupplyText, wanted, read.problems),
        cooling={name: cooling.text(name) for name in cooling.fields} if cooling else {},
        other_sources=read_lines(top, "other_sources"),
        back_on=read_lines(top, "back_on"),
    )


def _parts(read: _Folder, pack: Pack) -> Mapping[str, str]:
    """What each part is called."""
    top = read.entry("parts")
    names = {part: top.text(part) for part in pack.parts}
    top.close()
    return names


def _check_options(read: _Folder, pack: Pack, texts: Texts) -> None:
    """Every option of a question has a label, and no label stands for nothing."""
    for name, text in texts.questions.items():
        known, told = pack.observations[name].options, text.options
        line = read.fields("observations").lines[name]
        for option in dict.fromkeys([*known, *told]):
            if option not in told:
                read.problems.append(_problem(read, "observations", line, name, f"has no words for {option}."))
            elif option not in known:
                read.problems.append(_problem(read, "observations", line, name, f"has no option {option}."))


def _check_start(read: _Folder, pack: Pack, texts: Texts) -> None:
    start, fields = texts.start, read.fields("start")
    if len(start.entries) != len(pack.complaints):
        what = f"has {len(start.entries)} entries; complaints.yaml has {len(pack.complaints)}."
        read.problems.append(_problem(read, "start", fields.lines.get("entries", 1), "entries", what))
    for reason in sorted(set(pack.out_of_scope.values()) - set(start.exits)):
        line = fields.lines.get("exits", 1)
        read.problems.append(_problem(read, "start", line, "exits", f"has no way out named {reason}."))


def _check_bare(read: _Folder, texts: Texts) -> None:
    flag_lines, task_lines = read.fields("red_flags").lines, read.fields("tasks").lines
    for name, flag in texts.flags.items():
        if not flag.first:
            read.problems.append(_problem(read, "red_flags", flag_lines[name], name, "has no first action."))
    for name, task in texts.tasks.items():
        for what in ("cautions", "steps", "stop_if"):
            if not getattr(task, what):
                read.problems.append(_problem(read, "tasks", task_lines[name], name, f"has no {what}."))
        for caution in task.cautions:
            if caution.signal not in set(SignalWord) or caution.sign not in ISO_SIGNS:
                words = f"has a caution with signal {caution.signal!r} and sign {caution.sign!r}."
                known = f"Signals: {', '.join(SignalWord)}. Signs: {', '.join(ISO_SIGNS)}."
                read.problems.append(PackProblem(read.shown["tasks"], task_lines[name], name, words, known))


def _problem(read: _Folder, name: str, line: int, where: str, what: str) -> PackProblem:
    return PackProblem(read.shown[name], line, where, what, "Add what is missing or take out what is left over.")
