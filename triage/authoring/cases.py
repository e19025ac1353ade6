"""A file of cases: what people said about their ovens, and what a repairer found or would have said.

A YAML list; each case has an `id`, the `answers` it tells of (observation to option, any subset), and what it should
come to: `expect` with the `causes` and the `band`, of which any one counts. `region` and `told` (the story in a
sentence, for people) may be left out. Read as strictly as a pack: every mistake at once, with file, line and remedy.
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path

from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN, Band, Pack
from triage.knowledge.entry import Entry
from triage.knowledge.problems import PackProblem, PackProblems
from triage.knowledge.yaml_reader import LocatedDict, read_list

NOT_CASES = ("holds no cases.", "Start each case with `- id:`; the pack README shows one.")


@dataclass(frozen=True, slots=True)
class Expected:
    """What a check should come to: any of these causes, any of these bands."""

    causes: tuple[str, ...]
    bands: tuple[Band, ...]


@dataclass(frozen=True, slots=True)
class Case:
    """one case; `region` is empty where the file names none."""

    id: str
    region: str
    answers: Mapping[str, str]
    expected: Expected


def read_cases(path: Path, pack: Pack, regions: Collection[str]) -> tuple[Case, ...]:
    """Every case of the file, in its order. PackProblems with all that is wrong with it."""
    problems: list[PackProblem] = []
    shown = path.name or str(path)
    if not _is_file(path):
        raise PackProblems([PackProblem(shown, 1, "file", "is no file here.", "Give the path of a file of cases.")])
    listed = read_list(path, shown, problems, NOT_CASES)
    entries = list(_entries(shown, listed or (), problems))
    if listed is not None and not listed:
        problems.append(PackProblem(shown, 1, "file", *NOT_CASES))
    cases = [_case(entry, pack, regions) for entry in entries]
    _refuse_repeated(entries, problems)
    if problems:
        raise PackProblems(problems)
    return tuple(cases)


def _is_file(path: Path) -> bool:
    try:
        return path.is_file()
    except OSError:  # a name no file system would take
        return False


def _entries(shown: str, listed: Iterable[object], problems: list[PackProblem]) -> Iterable[Entry]:
    lines = getattr(listed, "lines", ())
    for number, (item, line) in enumerate(zip(listed, lines, strict=True), 1):
        if isinstance(item, LocatedDict):
            named = item.get("id")
            where = f"case {named}" if isinstance(named, str) else f"case {number}"
            yield Entry(shown, where, item, problems)
        else:
            problems.append(
                PackProblem(shown, line, f"case {number}", "must hold named values.", "Start it with `id:`.")
            )


def _case(entry: Entry, pack: Pack, regions: Collection[str]) -> Case:
    name = entry.text("id")
    if name:
        entry.is_id("id", name)
    entry.used |= {"region", "told"}
    region = entry.choice("region", sorted(regions)) if entry.has("region") else ""
    answers = _answers(entry, pack)
    expected = _expected(entry, pack)
    entry.close()
    return Case(name, region, answers, expected)


def _answers(entry: Entry, pack: Pack) -> dict[str, str]:
    options = {o.id: (*o.options, CANT_TELL) for o in pack.observations.values()} | {SCREEN: (NONE_OF_THESE,)}
    answers = {}
    for name, below in entry.names("answers", required=True):
        if name in pack.retired:
            below.report(name, "is no longer asked.", f"Use {pack.retired[name]}.")
        elif name not in options:
            below.report(name, "is no observation of this pack.", _nearest(name, options, "observations"))
        elif below.is_id(name, below.fields[name]) and below.is_known(name, below.fields[name], list(options[name])):
            answers[name] = below.fields[name]
    return answers


def _expected(entry: Entry, pack: Pack) -> Expected:
    below = entry.below("expect", required=True)
    if below is None:
        return Expected((), ())
    known = {*pack.faults, *pack.out_of_scope.values()}
    causes = below.ids("causes")
    for cause in causes:
        if cause not in known:
            below.report("causes", f"has no {cause!r}.", _nearest(cause, known, "faults"))
    bands = below.ids("band", [band.value for band in Band])
    for key in ("causes", "band"):
        if below.fields.get(key) == []:
            below.report(key, "names nothing.", "Name one or more, any of which counts.")
    below.close()
    return Expected(causes, tuple(Band(band) for band in bands))


def _nearest(name: str, known: Collection[str], file: str) -> str:
    near = get_close_matches(name, sorted(known), 3)
    return f"Is it {' or '.join(near)}?" if near else f"The pack's {file}.yaml lists them all."


def _refuse_repeated(entries: Iterable[Entry], problems: list[PackProblem]) -> None:
    first: dict[str, int] = {}
    for entry in entries:
        name, line = entry.fields.get("id"), entry.fields.lines.get("id", entry.fields.line)
        if isinstance(name, str) and first.setdefault(name, line) != line:
            what = f"is the id of the case on line {first[name]} too."
            problems.append(PackProblem(entry.file, line, entry.where, what, "Give each case an id of its own."))
