"""A sentence for every reason, each saying what to do; test_form compares them with the engine's list."""

from triage.check_pages.presenters.readings.reasons import reason_sentence

WORDS = {"typed": "12 apples", "low": "1", "high": "240", "label": "Time"}


def test_it_names_what_was_typed_and_what_can_be_meant():
    assert "“12 apples”" in reason_sentence("not-a-number", WORDS)
    assert "240" in reason_sentence("too-large", WORDS)
    assert reason_sentence("missing", WORDS) == "This is still missing: Time."


def test_a_reason_from_a_later_engine_still_gets_a_sentence():
    assert reason_sentence("out-of-tune", WORDS).startswith("These figures cannot be used together.")
