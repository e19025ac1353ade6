"""Runs `manage.py pack` and keeps what it writes."""

from io import StringIO

import pytest
from django.core.management import CommandError, call_command


def said(*arguments):
    """What is written to standard output."""
    out = StringIO()
    call_command("pack", *arguments, stdout=out, stderr=StringIO())
    return out.getvalue()


def refused(*arguments):
    """The one sentence a bad question gets, with exit code 2 and nothing written."""
    out = StringIO()
    with pytest.raises(CommandError) as caught:
        call_command("pack", *arguments, stdout=out, stderr=StringIO())
    assert caught.value.returncode == 2
    assert out.getvalue() == ""
    assert "\n" not in str(caught.value)
    return str(caught.value)
