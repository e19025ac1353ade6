"""A log line is whole, one line for a program, and holds no path, no query and no word of an exception."""

import json
import logging
import sys

import pytest
from django.db import IntegrityError

from triage.operations.log_lines import JSONFormatter, TextFormatter

ROW = "Failing row contains (1, Alex Grey, 020 7946 0000)."


def record(message="job sheet %s written", *args, request=None, problem=None):
    exc_info = None
    if problem:
        try:
            raise problem
        except Exception:
            exc_info = sys.exc_info()
    made = logging.LogRecord("triage.some", logging.ERROR, "x.py", 1, message, args, exc_info)
    if request is not None:
        made.request = request
    return made


def test_a_program_reads_one_object_on_one_line():
    line = JSONFormatter().format(record("job sheet %s written\nfor firm %s", 3, 7))
    payload = json.loads(line)
    assert "\n" not in line
    assert (payload["level"], payload["logger"], payload["message"]) == (
        "error",
        "triage.some",
        "job sheet 3 written\nfor firm 7",
    )
    assert payload["time"].endswith("+00:00")


@pytest.mark.parametrize("lines", [TextFormatter(), JSONFormatter()])
def test_a_path_is_told_by_the_name_of_its_address(rf, lines):
    request = rf.get("/desk/invitation/s3cret/?complaint=no-heat")
    line = lines.format(record("%s: %s", "Internal Server Error", request.path, request=request))
    assert "s3cret" not in line
    assert "an address that is none" in line
    request.resolver_match = type("Match", (), {"view_name": "desk-invitation"})()
    assert "Internal Server Error: desk-invitation" in lines.format(
        record("%s: %s", "Internal Server Error", request.path, request=request)
    )


@pytest.mark.parametrize("lines", [TextFormatter(), JSONFormatter()])
def test_an_exception_keeps_its_kind_and_its_place_and_loses_its_words(lines):
    line = lines.format(record("it broke", problem=IntegrityError(ROW)))
    assert "django.db.utils.IntegrityError" in line
    assert "test_log_lines.py" in line
    assert "in record" in line
    assert "Alex" not in line


def test_the_exception_it_came_from_is_told_first_and_as_quietly():
    problem = ValueError("outer Alex")
    problem.__cause__ = KeyError("inner 7946")
    line = TextFormatter().format(record("it broke", problem=problem))
    assert line.index("builtins.KeyError") < line.index("builtins.ValueError")
    assert "Alex" not in line
    assert "7946" not in line


def test_a_developer_sees_everything(rf):
    request = rf.get("/check/")
    result = TextFormatter(verbose=True).format(
        record("%s", request.path, request=request, problem=ValueError("because"))
    )
    assert "/check/" in result
    assert "ValueError: because" in result


def test_a_message_with_a_percent_sign_and_no_values_stays(rf):
    assert TextFormatter().format(record("100 % sure", request=rf.get("/"))) == "ERROR triage.some: 100 % sure"
