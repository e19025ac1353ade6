"""The run-on test: what was heard, what may be left empty, and what it says."""

import pytest

from tests.check_pages.fragments import caption_of, lines_about
from triage.check_pages.presenters.readings.degrees import CELSIUS
from triage.check_pages.presenters.readings.fields import RUN_ON
from triage.check_pages.presenters.readings.form_input import FormInput
from triage.check_pages.presenters.readings.run_on import run_on_drawing, write_run_on
from triage.engine.readings.run_on import RUN_ON_FIELDS


@pytest.fixture
def drawing(check_request):
    return lambda text: run_on_drawing(check_request("/"), text)


@pytest.mark.parametrize(
    ("raw", "text"),
    [
        ({"heard": "20", "stopped": "25"}, "h20~s25"),
        ({"stopped": "22"}, "h22~s22"),
        ({"stopped": "0"}, "h0~s0"),
        ({"heard": "0.0", "stopped": "0.0"}, "h0.0~s0.0"),
        ({"cold": "1"}, "h0~c1"),
        ({"heard": "60", "much-heat": "1"}, "h60~g1"),
        ({}, ""),
    ],
)
def test_what_follows_from_the_rest_need_not_be_typed(check_request, raw, text):
    found = FormInput({f"read-{name}": value for name, value in raw.items()}, CELSIUS)
    found.parse(RUN_ON, RUN_ON_FIELDS)
    assert write_run_on(check_request("/"), found) == text


def test_a_fan_nobody_found_still_is_to_be_looked_at_again(drawing):
    assert any("once more when the oven is stone cold" in line for line in lines_about(drawing("h40")))
    assert not any("stone cold" in line for line in lines_about(drawing("h20~s25")))


def test_a_fan_that_never_ran_on_is_told_so(drawing):
    assert caption_of(drawing("h0.0~s0.0")).startswith("The fan was silent from switch-off on.")
    assert lines_about(drawing("h0.0~s0.0")) == ["That counts if the oven was hot and its fan used to run on."]
    assert "silent" not in caption_of(drawing("h0"))


def test_the_picture_says_the_same_in_words(drawing):
    assert caption_of(drawing("h40~c1")).startswith("The fan was still running when the oven was cold.")


def test_the_timer_stands_with_the_fields():
    assert RUN_ON.groups[0].tool == "run-on"
