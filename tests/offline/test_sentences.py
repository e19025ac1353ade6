"""Sentences of the phone's presenters: found by their words, the site's own, and counted by the language's rule."""

import re

from django.utils.translation import ngettext, override

from tests.whole_site.project_files import ROOT
from triage.offline.sentences import MAX_COUNTED, extract_messages, plural_table, presenter_sources, split_placeholders

LITERAL = re.compile(r'"((?:[^"\\]|\\.)*)"')


def test_sentences_are_found_by_their_words():
    script = 'visit.say("One.");visit.say(\n"Two %(n)s \\"x\\"", {n});say(other);essay("No.");v.sayCounted("a", "b", n)'
    assert extract_messages(script) == (["One.", 'Two %(n)s \\"x\\"'], [("a", "b")])


def test_the_phone_says_only_what_the_site_says():
    """So no sentence has two homes: changed in one place only, it is not the site's any more and stops here."""
    sources = (path.read_text("utf-8") for path in (ROOT / "triage").rglob("*.py"))
    said = {words for source in sources for words in LITERAL.findall(re.sub(r'"\s*\n\s*"', "", source))}
    plain, counted = extract_messages(presenter_sources())
    assert set(plain) <= said
    assert {words for both in counted for words in both} <= said
    assert plain


def test_every_say_has_its_words_beside_it():
    """A sentence that is worked out would be found by nobody."""
    calls = re.findall(r"\.say(?:Counted)?\(\s*(.)", presenter_sources())
    assert set(calls) == {'"'}


def test_forms_follow_the_rule_of_the_language():
    with override("en"):
        which, forms = plural_table(lambda n: ngettext("%(n)s answer", "%(n)s answers", n))
    assert (which, forms) == ("010", ["%(n)s answers", "%(n)s answer"])


def test_a_rule_with_three_forms_is_kept_to_the_last_count():
    """Polish, as Unicode CLDR gives it: one; few for 2 to 4 but not 12 to 14; many."""

    def polish(n):
        few = n % 10 in (2, 3, 4) and n % 100 not in (12, 13, 14)
        return "one" if n == 1 else "few" if few else "many"

    which, forms = plural_table(polish)
    assert [forms[int(which[min(n, len(which) - 1)])] for n in range(MAX_COUNTED)] == [
        polish(n) for n in range(MAX_COUNTED)
    ]


def test_a_sentence_is_taken_apart_at_its_words():
    assert list(split_placeholders("%(a)s of 100%% %(b)s")) == [("a", False), (" of 100% ", True), ("b", False)]
