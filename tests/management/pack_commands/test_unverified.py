"""`manage.py pack unverified`: every fact that a person still has to confirm, and with whom."""

import json
from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from triage.knowledge.library import library


def said(*words):
    out = StringIO()
    call_command("pack", *words, stdout=out)
    return out.getvalue()


def test_every_unverified_fact_of_every_region_is_listed_with_whom_to_ask():
    facts = json.loads(said("unverified", "--json"))
    wanted = [
        {"region": code, "fact": fact, "check_with": check_with}
        for code, profile in library().regions.items()
        for fact, check_with in profile.unverified
    ]
    assert facts == wanted
    assert {fact["region"] for fact in facts} == set(library().regions)


def test_the_list_for_people_ends_with_how_many_there_are():
    text = said("unverified", "--region", "us")
    count = len(library().regions["us"].unverified)
    assert text.startswith("us\n")
    assert text.rstrip().endswith(f"{count} facts to confirm.")
    assert text.count("Check with ") == count


def test_an_unknown_region_is_told_with_those_there_are():
    with pytest.raises(CommandError, match=r"There is no region moon\. Known: .*gb-eng") as refused:
        said("unverified", "--region", "moon")
    assert refused.value.returncode == 2
