"""Templates as data: Django's own reading of them, and a refusal of what the phone could not fill."""

import pytest
from django.template import engines
from django.utils.translation import ngettext, override

from tests.whole_site.project_files import ROOT
from triage.offline import page_templates
from triage.offline.page_bundle import PAGES, STANDALONE_PAGES
from triage.offline.page_templates import (
    MAX_COUNTED,
    PageTemplates,
    UnsupportedInOfflineTemplate,
    plural_table,
    split_placeholders,
)

FILLING = ROOT / "triage" / "static" / "triage" / "offline" / "pages" / "filling.js"


@pytest.fixture
def written_down(monkeypatch):
    """The data of a template's source, all else being the site's own."""

    def write_down(source):
        template = engines["django"].from_string(source)
        monkeypatch.setattr(page_templates, "get_template", lambda _: template)
        return PageTemplates([], ["some"]).templates["some"]

    return write_down


def test_text_and_what_is_the_same_on_every_page_become_one_text(written_down):
    tags = '{% translate "Yes" %} {% static "a.css" %}{% url "household-step" %}'
    source = f"{{% load i18n static %}}<p>{{# nothing #}}{tags}</p>"
    assert written_down(source) == ["<p>Yes /static/a.css/check/</p>"]


def test_each_tag_is_written_with_its_letter(written_down):
    assert written_down("{{ page.heading }}{{ x|lower }}") == [["v", "page.heading"], ["v", "x|lower"]]
    assert written_down("{% for a, b in rows %}{{ a }}{% endfor %}") == [["f", ["a", "b"], "rows", [["v", "a"]]]]
    assert written_down('{% with kind="grave" ok=True n=1 %}x{% endwith %}') == [
        ["w", {"kind": "=grave", "ok": True, "n": 1}, ["x"]]
    ]
    assert written_down("{% widthratio at 1 22 %}") == [["r", "at", 1.0, 22.0]]


def test_branches_stand_by_turns_with_their_tests(written_down):
    source = '{% if a == "x" or not b %}1{% elif forloop.counter <= n %}2{% else %}3{% endif %}'
    assert written_down(source) == [
        ["i", ["or", ["==", "a", "=x"], ["not", "b"]], ["1"], ["<=", "forloop.counter", "n"], ["2"], ["3"]]
    ]


def test_what_hangs_on_a_firm_is_left_out(written_down):
    source = "{% load static %}a{% if firm %}{{ firm.slug|slugify }}{% endif %}b{% if offer %}x{% else %}y{% endif %}"
    assert written_down(source) == ["aby"]


def test_a_sentence_keeps_its_words_open_and_counts_by_its_forms(written_down):
    sentence = "{% load i18n %}{% blocktranslate with n=page.number %}Question {{ n }}, 100%{% endblocktranslate %}"
    assert written_down(sentence) == ["Question ", ["v", "page.number"], ", 100%"]
    counted = "{% blocktranslate count n=all|length %}{{ n }} line{% plural %}{{ n }} lines{% endblocktranslate %}"
    forms = [[["v", "all|length"], " lines"], [["v", "all|length"], " line"]]
    assert written_down("{% load i18n %}" + counted) == [["n", "all|length", "010", *forms]]


def test_a_text_kept_under_a_name_is_filled_where_the_name_stands(written_down):
    part = '{% load i18n %}{% translate "half" as part %}'
    line = "{% blocktranslate asvar line %}{{ part }} of it{% endblocktranslate %}{{ line }}"
    assert written_down(part + line) == [
        ["s", "part", ["half"]],
        ["s", "line", [["v", "part"], " of it"]],
        ["v", "line"],
    ]


@pytest.mark.parametrize(
    ("source", "words"),
    [
        ("{% now 'Y' %}", "NowNode"),
        ("{{ page.heading|title }}", "filters"),
        ("{% if a in b %}x{% endif %}", "“in”"),
        ("{% for a in b reversed %}x{% endfor %}", "backwards"),
        ("{% for a in b %}x{% empty %}y{% endfor %}", "empty"),
        ("{% include page.name %}", "Name it"),
    ],
)
def test_what_the_phone_cannot_fill_is_refused_with_the_remedy(written_down, source, words):
    with pytest.raises(UnsupportedInOfflineTemplate, match="not known to the phone") as refused:
        written_down(source)
    assert words in str(refused.value)


def test_every_page_of_the_check_can_be_filled_and_the_phone_knows_each_tag():
    with override("en"):
        pages = PageTemplates(PAGES, STANDALONE_PAGES)
    assert set(pages.blocks) == set(PAGES)
    assert {f"_{page}" for page in PAGES} | {"base", "404", "_way_out"} <= set(pages.templates)
    known = FILLING.read_text("utf-8").split("const TAGS = {")[1].split("\n};")[0]
    for letter in letters_in([pages.templates, pages.blocks]):
        assert f"\n  {letter}: (" in known, letter


def letters_in(told):
    """The letters of all tags, wherever they stand."""
    if isinstance(told, dict):
        return set().union(*(letters_in(item) for item in told.values()))
    if not isinstance(told, list):
        return set()
    own = {told[0]} if told and isinstance(told[0], str) and len(told) > 1 and told[0] in set("vifwubnrs") else set()
    return own.union(*(letters_in(item) for item in told))


def test_no_page_names_a_firm_and_no_form_but_a_readings_is_sent():
    with override("en"):
        told = str(PageTemplates(PAGES, STANDALONE_PAGES).templates)
    assert "data-firm-origins" not in told
    assert "data-offer" not in told
    assert told.count("<form") == told.count("data-reading=") == 1


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
