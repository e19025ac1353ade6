"""The run-on test: what was heard, what may be left empty, and what it says."""

import pytest

from triage.check_pages.presenters.readings.run_on import read_run_on, run_on_groups, run_on_told, write_run_on
from triage.check_pages.presenters.readings.typed import Typed


def written(check_request, **raw):
    found = Typed({f"read-{name.replace('_', '-')}": text for name, text in raw.items()})
    seen = check_request("/")
    read_run_on(seen, found)
    return write_run_on(seen, found)


@pytest.mark.parametrize(
    ("raw", "text"),
    [
        ({"heard": "20", "stopped": "25"}, "h20~s25"),
        ({"stopped": "22"}, "h22~s22"),
        ({"stopped": "0"}, "h0~s0"),
        ({"heard": "0.0", "stopped": "0.0"}, "h0.0~s0.0"),
        ({"cold": "1"}, "h0~c1"),
        ({"heard": "60", "much_heat": "1"}, "h60~g1"),
        ({}, ""),
    ],
)
def test_what_follows_from_the_rest_need_not_be_typed(check_request, raw, text):
    assert written(check_request, **raw) == text


def test_a_fan_nobody_found_still_is_to_be_looked_at_again(check_request):
    assert any("once more when the oven is stone cold" in line for line in run_on_told(check_request("/"), "h40").lines)
    assert not any("stone cold" in line for line in run_on_told(check_request("/"), "h20~s25").lines)


def test_a_fan_that_never_ran_on_is_told_so(check_request):
    told = run_on_told(check_request("/"), "h0.0~s0.0")
    assert told.drawing.words.startswith("The fan was silent from switch-off on.")
    assert told.lines == ["That counts if the oven was hot and its fan used to run on."]
    assert "silent" not in run_on_told(check_request("/"), "h0").drawing.words


def test_the_picture_says_the_same_in_words(check_request):
    words = run_on_told(check_request("/"), "h40~c1").drawing.words
    assert words.startswith("The fan was still running when the oven was cold.")


def test_the_timer_stands_with_the_fields(check_request):
    assert run_on_groups(check_request("/"), Typed({}))[0].tool == "run-on"
