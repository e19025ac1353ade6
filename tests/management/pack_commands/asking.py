"""Asks `manage.py pack` a question and keeps what it says."""

from io import StringIO

import pytest
from django.core.management import CommandError, call_command


def said(*words):
    """What is written to standard output."""
    out = StringIO()
    call_command("pack", *words, stdout=out, stderr=StringIO())
    return out.getvalue()


def refused(*words):
    """The one sentence a bad question gets, with exit code 2 and nothing written."""
    out = StringIO()
    with pytest.raises(CommandError) as caught:
        call_command("pack", *words, stdout=out, stderr=StringIO())
    assert caught.value.returncode == 2
    assert out.getvalue() == ""
    assert "\n" not in str(caught.value)
    return str(caught.value)
