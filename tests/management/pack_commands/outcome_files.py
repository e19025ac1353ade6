"""Outcomes in a file, and the command that reads them."""

from io import StringIO
from random import Random

import yaml
from django.core.management import call_command

from tests.learning.visits import drawn_visits, written_library


def said(*arguments):
    """What `manage.py pack` writes to a person."""
    out = StringIO()
    call_command("pack", *map(str, arguments), stdout=out, stderr=StringIO())
    return out.getvalue()


def outcome_file(folder, count=30, firm="north"):
    """Drawn visits as a firm would write them down."""
    rows = [
        {
            "reference": outcome.reference,
            "firm": firm,
            "region": outcome.region,
            "day": outcome.day,
            "answers": dict(outcome.answers),
            "found": list(outcome.found),
            "first_visit": outcome.first_visit,
        }
        for outcome in drawn_visits(written_library().pack, count, Random(21))
    ]
    path = folder / "outcomes.yaml"
    path.write_text(yaml.safe_dump({"outcomes": rows}), "utf-8")
    return path
