"""The kinds of reading as people meet them are the engine's, each with its texts."""

from triage.check_pages.presenters.readings.fields import FORMS
from triage.check_pages.presenters.readings.kinds import KINDS
from triage.engine import readings


def test_each_kind_of_the_engine_has_a_form_a_name_and_an_introduction():
    assert list(KINDS) == list(readings.READERS) == list(FORMS)
    assert all(str(text)[0].isupper() for texts in FORMS.values() for text in (texts.name, texts.intro))


def test_each_figure_of_a_form_has_its_limits_in_the_table_of_its_kind():
    for kind, texts in FORMS.items():
        figures = [one for group in texts.groups for one in group.fields if not one.tick]
        assert {one.limits or one.name for one in figures} <= set(KINDS[kind].limits), kind
