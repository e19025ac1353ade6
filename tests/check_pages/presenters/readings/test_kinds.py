"""The kinds of reading as people meet them are the engine's, each with its words."""

from triage.check_pages.presenters.readings.kinds import KINDS, form_intros, kind_names
from triage.engine import readings


def test_each_kind_of_the_engine_has_a_form_a_name_and_an_introduction():
    assert list(KINDS) == list(readings.KINDS) == list(kind_names()) == list(form_intros())
    assert all(words[0].isupper() for words in (*kind_names().values(), *form_intros().values()))
