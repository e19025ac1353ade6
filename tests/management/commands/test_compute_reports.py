"""`manage.py compute_reports`: what the desk shows, worked out for the pack and for each firm."""

from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from tests.firm_builders import make_firm
from triage.models import Report

pytestmark = pytest.mark.django_db


def run(*data):
    out = StringIO()
    call_command("compute_reports", *data, stdout=out, stderr=StringIO())
    return out.getvalue()


def test_the_pack_and_every_firm():
    make_firm(slug="hearth")
    assert run("--samples", "5") == "The page about the pack is worked out.\nhearth: too few outcomes yet.\n"
    assert Report.objects.get().contents["checks"] == 5


def test_one_firm_alone():
    make_firm(slug="hearth")
    make_firm(slug="other")
    assert run("--firm", "hearth") == "hearth: too few outcomes yet.\n"


@pytest.mark.parametrize(
    ("data", "text"),
    [(("--samples", "0"), "--samples must be from 1 to 100000, not 0."), (("--firm", "x"), "There is no firm x.")],
)
def test_a_mistake_is_told(data, text):
    with pytest.raises(CommandError, match=text):
        run(*data)
