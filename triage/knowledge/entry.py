"""Reads one named entry of a pack file field by field, and collects what is wrong instead of stopping.

A field that is missing or of the wrong kind is reported with what is allowed and comes back as a harmless stand-in,
so that one run shows every mistake. `close()` reports the fields nobody asked for.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from enum import Enum
from typing import Any, TypeVar

from triage.knowledge.problems import PackProblem
from triage.knowledge.yaml_reader import LocatedDict, LocatedList

E = TypeVar("E", bound=Enum)
KEBAB = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


class Entry:
    """One mapping of a file, with `where` naming it for messages."""

    def __init__(self, file: str, where: str, fields: LocatedDict, problems: list[PackProblem]) -> None:
        self.file = file
        self.where = where
        self.fields = fields
        self.problems = problems
        self.used: set[str] = set()

    def report(self, key: str, what: str, remedy: str) -> None:
        line = self.fields.lines.get(key, self.fields.line)
        where = f"{self.where}, {key}" if key in self.fields else self.where
        self.problems.append(PackProblem(self.file, line, where, what, remedy))

    def has(self, key: str) -> bool:
        return key in self.fields

    def text(self, key: str, default: str | None = None) -> str:
        value = self._value(key, default, "a text")
        if isinstance(value, str) and value.strip():
            return value.strip()
        if value is not None:
            self.report(key, f"must be a text, not {value!r}.", "Put it in quotes if YAML reads it as something else.")
        return default or ""

    def number(self, key: str, low: float, high: float, default: float | None = None) -> float:
        value = self._value(key, default, "a number")
        if isinstance(value, int | float) and not isinstance(value, bool) and low <= value <= high:
            return float(value)
        if value is not None:
            self.report(key, f"must be a number from {low:g} to {high:g}, not {value!r}.", "Give one in that range.")
        return low if default is None else default

    def flag(self, key: str, default: bool) -> bool:
        value = self._value(key, default, "true or false")
        if isinstance(value, bool):
            return value
        self.report(key, f"must be true or false, not {value!r}.", "Write one of the two.")
        return default

    def choice(self, key: str, allowed: Iterable[str], default: str | None = None) -> str:
        known = list(allowed)
        value = self._value(key, default, f"one of {_listed(known)}")
        if value is not None and value not in known:
            self.report(key, f"has no {value!r}.", f"Allowed: {_listed(known)}.")
        return value if value in known else (default or next(iter(known), ""))

    def member(self, key: str, kind: type[E]) -> E:
        """One of a closed set, by its value."""
        return kind(self.choice(key, [member.value for member in kind]))

    def members(self, key: str, kind: type[E]) -> tuple[E, ...]:
        """A list of members of a closed set, each once; nothing where the key is not there."""
        return tuple(kind(value) for value in self.ids(key, [member.value for member in kind], ()))

    def ids(
        self, key: str, known: Iterable[str] | None = None, default: tuple[str, ...] | None = None
    ) -> tuple[str, ...]:
        """A list of kebab-case ids, each once, all of them in `known` when that is given."""
        value = self._value(key, default, "a list")
        if value is None or isinstance(value, tuple):
            return value or ()
        if not isinstance(value, list):
            self.report(key, f"must be a list, not {value!r}.", "Write it as [one, two].")
            return ()
        allowed = None if known is None else list(known)
        found = [item for item in value if self.is_id(key, item) and self.is_known(key, item, allowed)]
        once = tuple(dict.fromkeys(found))
        for item in once:
            if found.count(item) > 1:
                self.report(key, f"names {item!r} twice.", "Keep one of them.")
        return once

    def is_id(self, key: str, value: Any) -> bool:
        if isinstance(value, str) and KEBAB.fullmatch(value):
            return True
        read_as = "is read by YAML as yes/no or nothing, not as" if isinstance(value, bool | None) else "is not"
        self.report(key, f"{value!r} {read_as} an id.", "Ids are lower-case words joined by hyphens.")
        return False

    def is_known(self, key: str, value: str, allowed: list[str] | None) -> bool:
        if allowed is None or value in allowed:
            return True
        self.report(key, f"has no {value!r}.", f"Allowed: {_listed(allowed)}.")
        return False

    def below(self, key: str, required: bool = False) -> "Entry | None":
        """The mapping under `key` as an entry of its own."""
        value = self._value(key, None if required else LocatedDict(self.fields.line), "named values")
        if isinstance(value, LocatedDict):
            return Entry(self.file, f"{self.where}, {key}", value, self.problems)
        if value is not None:
            self.report(key, f"must hold named values, not {value!r}.", "Write `name: value` lines below it.")
        return None

    def names(self, key: str, required: bool = False) -> Iterator[tuple[str, "Entry"]]:
        """Each name under `key`, with the entry that holds it."""
        below = self.below(key, required)
        if below is not None:
            for name in below.fields:
                yield name, below

    def items(self, key: str, required: bool = True) -> Iterator["Entry"]:
        """The mappings listed under `key`."""
        value = self._value(key, None if required else LocatedList(self.fields.line), "a list of entries")
        if value is not None and not isinstance(value, LocatedList):
            self.report(key, "must be a list.", "Start each entry with `- `.")
            return
        for number, item in enumerate(value or (), 1):
            if isinstance(item, LocatedDict):
                yield Entry(self.file, f"{self.where}, {key} {number}", item, self.problems)
            else:
                self.report(key, f"entry {number} must hold named values.", "Write it as {name: value}.")

    def gate(self, key: str, options: Mapping[str, Iterable[str]]) -> dict[str, frozenset[str]]:
        """A mapping from an id to the options of it that are meant; `options` lists what each id has."""
        gates: dict[str, frozenset[str]] = {}
        for name, below in self.names(key):
            if below.is_known(name, name, list(options)):
                gates[name] = frozenset(below.ids(name, options[name]))
        return gates

    def answer(self, options: Mapping[str, Iterable[str]]) -> tuple[str, str] | None:
        """An `observation` and one `option` of it; None, and no word on the option, if there is no such question."""
        self.used.add("option")
        observation = self.choice("observation", options)
        if self.fields.get("observation") != observation:
            return None
        return observation, self.choice("option", options[observation])

    def close(self) -> None:
        for key in self.fields:
            if key not in self.used:
                known = ", ".join(sorted(self.used))
                self.report(key, "is not a field here.", f"Known fields: {known}.")

    def _value(self, key: str, default: Any, kind: str) -> Any:
        self.used.add(key)
        if key in self.fields:
            value = self.fields[key]
            return "" if value is None else value
        if default is None:
            self.report(key, f"`{key}` is missing.", f"Give {kind}.")
        return default


def _listed(names: Iterable[str]) -> str:
    return ", ".join(names) or "nothing yet"


def entries(file: str, fields: LocatedDict, problems: list[PackProblem]) -> Iterator[tuple[str, Entry]]:
    """The named entries of a file; a name that is no id or holds no fields is reported and left out."""
    top = Entry(file, "file", fields, problems)
    for name in fields:
        if top.is_id(name, name):
            below = top.below(name, required=True)
            if below is not None:
                below.where = name
                yield name, below
