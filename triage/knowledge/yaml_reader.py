"""YAML to plain data that remembers its lines; refuses duplicate keys, aliases, tags, oversized and bottomless files.

Aliases and tags are refused because a pack is data that a person reads line by line, and because nested aliases are
how a small file becomes a huge one. All of this is seen in the stream of events, before any value is built.
"""

from pathlib import Path
from typing import Any

import yaml

from triage.knowledge.problems import PackProblem

# libyaml reads the packs several times faster; without it the same YAML is read more slowly.
LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
MAX_FILE_BYTES = 1_000_000
MAX_DEPTH = 20
MAX_NUMBER_LENGTH = 30


class LocatedDict(dict[str, Any]):
    """A mapping with the line of each key (`lines`) and of itself (`line`)."""

    def __init__(self, line: int) -> None:
        super().__init__()
        self.line = line
        self.lines: dict[str, int] = {}


class LocatedList(list[Any]):
    """A list with its own line and that of each item."""

    def __init__(self, line: int) -> None:
        super().__init__()
        self.line = line
        self.lines: list[int] = []


def read_yaml(path: Path, shown: str, problems: list[PackProblem]) -> LocatedDict | None:
    """The top-level mapping of a file, or None with the reason added to `problems`."""
    otherwise = ("does not hold named entries.", "Start with `name:` lines.")
    data = _read(path, shown, problems, yaml.MappingNode, otherwise)
    return data if isinstance(data, LocatedDict) else None


def read_list(path: Path, shown: str, problems: list[PackProblem], otherwise: tuple[str, str]) -> LocatedList | None:
    """The top-level list of a file, or None with the reason added to `problems`; `otherwise` says what is wrong with a
    file that is empty or something else, and what to do."""
    data = _read(path, shown, problems, yaml.SequenceNode, otherwise)
    return data if isinstance(data, LocatedList) else None


def _read(
    path: Path, shown: str, problems: list[PackProblem], wanted: type[yaml.Node], otherwise: tuple[str, str]
) -> Any:
    text = _text(path, shown, problems)
    if text is None:
        return None
    try:
        refusal = _refusal(text, shown)
        if refusal is not None:
            problems.append(refusal)
            return None
        root = yaml.compose(text, LOADER)
    except yaml.YAMLError as error:
        mark = getattr(error, "problem_mark", None)
        line = mark.line + 1 if mark else 1
        said = getattr(error, "problem", None) or "cannot be read"
        problems.append(
            _too_deep(shown, line)
            if "nesting depth" in said
            else PackProblem(shown, line, "file", f"is not valid YAML: {said}.", "Check spaces, colons and quotes.")
        )
        return None
    if not isinstance(root, wanted):
        problems.append(PackProblem(shown, 1, "file", *otherwise))
        return None
    return _plain(root, shown, problems)


def _text(path: Path, shown: str, problems: list[PackProblem]) -> str | None:
    if not path.is_file():
        problems.append(PackProblem(shown, 1, "file", "is missing.", "Add it; the pack README names every file."))
        return None
    if path.stat().st_size > MAX_FILE_BYTES:
        problems.append(PackProblem(shown, 1, "file", f"is larger than {MAX_FILE_BYTES} bytes.", "Split it."))
        return None
    try:
        return path.read_text("utf-8")
    except UnicodeDecodeError:
        problems.append(PackProblem(shown, 1, "file", "is not UTF-8 text.", "Save it as UTF-8."))
    except OSError as error:
        problems.append(PackProblem(shown, 1, "file", f"cannot be opened: {error.strerror}.", "Check who may read it."))
    return None


def _refusal(text: str, shown: str) -> PackProblem | None:
    """The first thing in the file that a pack may not use, with its line."""
    depth = 0
    for event in yaml.parse(text, LOADER):
        line = event.start_mark.line + 1 if event.start_mark else 1
        tag = getattr(event, "tag", None)
        depth += isinstance(event, yaml.CollectionStartEvent) - isinstance(event, yaml.CollectionEndEvent)
        if isinstance(event, yaml.AliasEvent):
            return PackProblem(shown, line, "file", "uses an alias (*name).", "Write the value out.")
        if tag is not None:
            return PackProblem(shown, line, "file", f"uses a tag ({tag}).", "Write the plain value.")
        if depth > MAX_DEPTH:
            return _too_deep(shown, line)
    return None


def _too_deep(shown: str, line: int) -> PackProblem:
    return PackProblem(shown, line, "file", "is nested too deeply.", "Use fewer levels.")


def _plain(node: yaml.Node, shown: str, problems: list[PackProblem]) -> Any:
    line = node.start_mark.line + 1
    if isinstance(node, yaml.MappingNode):
        mapped = LocatedDict(line)
        for key_node, value_node in node.value:
            at = key_node.start_mark.line + 1
            if not isinstance(key_node, yaml.ScalarNode):
                problems.append(PackProblem(shown, at, "file", "has a name that is no word.", "Name it in words."))
                continue
            key = str(key_node.value)
            if key in mapped:
                problems.append(PackProblem(shown, at, key, "stands twice in the same place.", "Keep one of them."))
            mapped[key] = _plain(value_node, shown, problems)
            mapped.lines[key] = at
        return mapped
    if isinstance(node, yaml.SequenceNode):
        listed = LocatedList(line)
        for item in node.value:
            listed.append(_plain(item, shown, problems))
            listed.lines.append(item.start_mark.line + 1)
        return listed
    return _scalar(node, shown, problems)


def _scalar(node: yaml.Node, shown: str, problems: list[PackProblem]) -> Any:
    kind, value = node.tag.rpartition(":")[2], str(node.value)
    if kind not in {"str", "int", "float", "bool", "null"}:
        what = "is read by YAML as a date or a tagged value."
    elif kind in {"int", "float"} and len(value) > MAX_NUMBER_LENGTH:
        what = f"is read by YAML as a number of more than {MAX_NUMBER_LENGTH} signs."
    else:
        try:
            return LOADER("").construct_object(node)
        except ValueError:
            what = "is read by YAML as a number that is not complete."
    problems.append(PackProblem(shown, node.start_mark.line + 1, value, what, "Put it in quotes."))
    return value
