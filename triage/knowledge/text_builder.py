"""Text files to `Texts`. A text that is missing, that belongs to nothing or that names an unknown word is refused.

The fields of a shape in `texts.py` are what its file must hold: a text, a list of texts, named texts, or shapes again.
"""

from collections.abc import Iterable, Mapping
from dataclasses import MISSING, fields, is_dataclass
from types import UnionType
from typing import Any, TypeVar, cast, get_args, get_origin, get_type_hints

from triage.knowledge.entry import Entry, entries
from triage.knowledge.problems import PackProblem
from triage.knowledge.wording import ISOLATE, REGION_TERMS, unknown_terms
from triage.knowledge.yaml_reader import LocatedDict

Shape = TypeVar("Shape")


def build_named(
    file: str, top: LocatedDict, shape: type[Shape], ids: Iterable[str], problems: list[PackProblem]
) -> dict[str, Shape]:
    """One shape for every id, in the file's order; ids without a text and texts without an id are reported."""
    wanted = dict.fromkeys(ids)
    found = {}
    for name, entry in entries(file, top, problems):
        if entry.is_known(name, name, list(wanted)):
            found[name] = build_shape(entry, shape)
    missing = [name for name in wanted if name not in top]
    problems += [PackProblem(file, 1, name, "has no text here.", "Add an entry with that name.") for name in missing]
    return found


def build_shape(entry: Entry, shape: type[Shape]) -> Shape:
    """One shape from one entry, with harmless stand-ins for what is wrong."""
    hints = get_type_hints(shape)
    values = {}
    for field in fields(cast(Any, shape)):
        optional = field.default is not MISSING or field.default_factory is not MISSING
        if optional and entry.fields.get(field.name) in (None, "", []):
            entry.used.add(field.name)
            continue
        values[field.name] = _value(entry, field.name, hints[field.name])
    entry.close()
    return shape(**values)


def read_lines(entry: Entry, key: str) -> tuple[str, ...]:
    """A list of texts, with at least one in it unless it stands there empty."""
    entry.used.add(key)
    value = entry.fields.get(key)
    if isinstance(value, list) and all(isinstance(line, str) and line.strip() for line in value):
        return tuple(line.strip() for line in value)
    what = "must be a list of texts." if key in entry.fields else f"`{key}` is missing."
    entry.report(key, what, "Write each on a line of its own after `- `, in quotes where YAML reads it otherwise.")
    return ()


def check_terms(file: str, value: Any, problems: list[PackProblem], line: int = 1, where: str = "file") -> None:
    """Report every placeholder that no region has a word for, with its line."""
    if isinstance(value, LocatedDict):
        for key, item in value.items():
            check_terms(file, item, problems, value.lines[key], key)
    elif isinstance(value, list):
        for at, item in enumerate(value):
            check_terms(file, item, problems, value.lines[at], where)  # type: ignore[attr-defined]
    elif isinstance(value, str):
        for name in unknown_terms(value):
            allowed = ", ".join(f"{{{word}}}" for word in REGION_TERMS)
            problems.append(
                PackProblem(file, line, where, f"has no word {{{name}}}.", f"Allowed: {allowed}, {ISOLATE}.")
            )


def _value(entry: Entry, key: str, hint: Any) -> Any:
    origin, parts = get_origin(hint), get_args(hint)
    if origin is UnionType:
        return _value(entry, key, next(part for part in parts if part is not type(None)))
    if hint is str:
        return entry.text(key)
    if origin is tuple and parts[0] is str:
        return read_lines(entry, key)
    if origin is tuple:
        return tuple(build_shape(item, parts[0]) for item in entry.items(key))
    if origin is Mapping or hint is Mapping:
        below = entry.below(key, required=True)
        return {name: _value(below, name, parts[1]) for name in below.fields} if below else {}
    if is_dataclass(hint):
        below = entry.below(key, required=True) or Entry(entry.file, entry.where, LocatedDict(entry.fields.line), [])
        return build_shape(below, cast(type[Any], hint))
    raise TypeError(f"{key} has a type that no text can have: {hint}")
