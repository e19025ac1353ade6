"""The pages as one classic script: whole, bare, no name used twice, and minified after the last change."""

import re
from collections import Counter

from tests.golden.test_engine_files import REACHES_OUT, TOP_LEVEL, without_comments
from tests.offline.minifying import minified_files
from triage.offline.classic_script import ENGINE
from triage.offline.page_script import PAGES, WAYS_IN, page_script, page_source

MODULES = {path: path.read_text("utf-8") for folder in (ENGINE, PAGES) for path in sorted(folder.rglob("*.js"))}


def test_every_module_is_in_it_and_nothing_but_code():
    script = page_source()
    functions = {
        name for source in MODULES.values() for name in re.findall(r"^(?:export )?function (\w+)", source, re.MULTILINE)
    }
    assert functions <= set(re.findall(r"^function (\w+)", script, re.MULTILINE))
    assert re.search(r"^(import|export)\b|/\*|^\s", script, re.MULTILINE) is None


def test_the_minified_scripts_are_those_of_the_modules():
    """Otherwise run `python -m tests.offline`."""
    assert [path.name for path, text in minified_files().items() if path.read_text("utf-8") != text] == []


def test_nothing_but_the_ways_in_can_be_reached(page):
    page.add_script_tag(content=f"window.before = Object.keys(self);{page_script().text}")
    assert page.evaluate("Object.keys(self).filter((name) => !before.includes(name))") == ["before", *WAYS_IN]


def test_no_two_modules_use_one_name_so_that_they_can_become_one_classic_script():
    names = Counter(name for source in MODULES.values() for name in TOP_LEVEL.findall(without_comments(source)))
    assert [name for name, times in names.items() if times > 1] == []


def test_the_pages_reach_for_nothing_outside():
    """A page depends on its address alone, as on the site."""
    found = {path.name: re.findall(REACHES_OUT, without_comments(source)) for path, source in MODULES.items()}
    assert {name: words for name, words in found.items() if words} == {}


def test_each_presenter_and_drawing_is_named_as_the_sites():
    for folder, of_its_own in (("presenters", {"reading_words"}), ("drawings", set())):
        site = {path.stem for path in (PAGES.parents[3] / "check_pages" / folder).rglob("*.py")}
        own = {path.stem for path in (PAGES / folder).rglob("*.js")}
        assert own - site == of_its_own


def test_its_version_changes_with_its_bytes():
    assert re.fullmatch("[0-9a-f]{16}", page_script().version)
    assert page_script() is page_script()
