"""The summary of a job sheet in the database: there its members go by the names they had at first.

The release before reads and writes the same rows, so a name changes here as a column's does with `db_column`. A row
under either name is read, so that a later release may turn to the new ones and rename what is stored.
"""

from collections.abc import Mapping
from typing import Any

from django.db import models

# Name in the code and in everything sent, and name in the database; each stands for one thing at any depth.
STORED = {
    "complaint": "trouble",
    "instructed": "told",
    "text": "words",
    "attempted": "tried",
    "indistinguishable": "alike",
    "related": "also_check",
    "ignored_answers": "dropped",
    "check_url": "check_again",
    "probability": "chance",
    "probability_text": "chance_words",
    "technician_notes": "for_the_repairer",
    "parts_to_bring": "bring",
    "first_visit_probability": "first_visit_chance",
    "first_visit_text": "first_visit_words",
    "max_probability": "at_best",
}
READ = {stored: name for name, stored in STORED.items()}


class SummaryField(models.JSONField):
    """JSON whose members are renamed on the way in and out. To migrations it is any JSON field."""

    def deconstruct(self) -> tuple[str, str, list[Any], dict[str, Any]]:
        name, _path, args, kwargs = super().deconstruct()
        return name, "django.db.models.JSONField", list(args), kwargs

    def get_prep_value(self, value: Any) -> Any:
        return renamed(super().get_prep_value(value), STORED)

    def from_db_value(self, value: Any, expression: Any, connection: Any) -> Any:
        return renamed(super().from_db_value(value, expression, connection), READ)


def renamed(value: Any, names: Mapping[str, str]) -> Any:
    """The same JSON with its members under their other names."""
    if isinstance(value, dict):
        return {names.get(key, key): renamed(inner, names) for key, inner in value.items()}
    if isinstance(value, list):
        return [renamed(inner, names) for inner in value]
    return value
