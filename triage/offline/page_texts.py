"""The words of the pages as the phone keeps them, and the places in whose words they are read.

What takes the most room has no names in it: questions, faults, red flags and tasks are rows in the pack's order, the
words of a question's options stand in the order of its options. Placeholders stay open, because one copy serves every
region. What no page shows is left out.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from typing import Any

from django.utils.functional import Promise

from triage.check_pages.presenters.readings.fields import FORMS
from triage.check_pages.presenters.start import search_terms
from triage.engine.pack import Pack
from triage.knowledge.region_builder import RegionProfile
from triage.knowledge.texts import StartText, Texts
from triage.offline.page_templates import UnsupportedInOfflineTemplate

# Read aloud by an agent, or for the repairer alone.
NOT_SHOWN = {"say", "again", "part", "repairer", "kit"}
REGION_FIELDS = (
    *("name", "territory", "emergency", "emergency_for", "gas", "gas_text", "network", "network_text", "currency"),
    *("isolation_note", "local_line", "hardwired", "appliance_inside", "claim_first", "terms"),
    *("temperature", "nominal_voltage"),
)


def page_texts(texts: Texts, pack: Pack) -> dict[str, Any]:
    questions = _table(texts.questions, pack.observations)
    at = questions["of"].index("options")
    for row, observation in zip(questions["rows"], pack.observations.values(), strict=True):
        if row:
            row[at] = [row[at][option] for option in observation.options]
    return {
        "language": texts.language,
        "questions": questions,
        "faults": _table(texts.faults, pack.faults),
        "flags": _table(texts.flags, pack.red_flags),
        "tasks": _table(texts.tasks, pack.tasks),
        "families": {name: {"split": family.split} for name, family in texts.families.items()},
        "gates": _plain(texts.gates),
        "isolation": _plain(texts.isolation),
        "start": _start(texts.start),
        "readings": _plain(FORMS),
    }


def _start(texts: StartText) -> dict[str, Any]:
    """The first page, of the words people type only what its search box needs."""
    if any("{" in entry.search_terms for entry in texts.entries):
        raise UnsupportedInOfflineTemplate(
            "The search words of the first page hold a place’s word. Write the words people type."
        )
    entries = [replace(entry, search_terms=search_terms(entry.search_terms)) for entry in texts.entries]
    start: dict[str, Any] = _plain(replace(texts, entries=tuple(entries)))
    return start


def page_regions(regions: Mapping[str, RegionProfile]) -> dict[str, Any]:
    return {region: {name: getattr(profile, name) for name in REGION_FIELDS} for region, profile in regions.items()}


def _table(shapes: Mapping[str, Any], ids: Iterable[str]) -> dict[str, Any]:
    """A row for every id, empty where it has no text."""
    first = next(iter(shapes.values()))
    return {"of": _names(first), "rows": [_row(shapes[each]) if each in shapes else None for each in ids]}


def _names(shape: Any) -> list[str]:
    return [field.name for field in fields(shape) if field.name not in NOT_SHOWN]


def _row(shape: Any) -> list[Any]:
    return [_plain(getattr(shape, name)) for name in _names(shape)]


def _plain(value: Any) -> Any:
    """A shape as an object, several of one kind in a row as a table."""
    if is_dataclass(value) and not isinstance(value, type):
        return dict(zip(_names(value), _row(value), strict=True))
    if isinstance(value, Mapping):
        return {key: _plain(item) for key, item in value.items()}
    if isinstance(value, Sequence) and not isinstance(value, str):
        if value and is_dataclass(value[0]):
            return {"of": _names(value[0]), "rows": [_row(item) for item in value]}
        return [_plain(item) for item in value]
    return str(value) if isinstance(value, Promise) else value
