"""The scripts of the phone's pages and of the pages themselves: pure, named as the site's, and all in use."""

import re

from tests.golden.test_engine_files import REACHES_OUT, without_comments
from tests.offline.phone_pages import PAGES
from triage.offline.precache import STATIC

MODULES = {path: path.read_text("utf-8") for path in sorted(PAGES.rglob("*.js"))}
OF_A_PAGE = STATIC / "triage" / "pages"


def test_the_pages_reach_for_nothing_outside():
    """A page depends on its address alone, as on the site."""
    found = {path.name: re.findall(REACHES_OUT, without_comments(source)) for path, source in MODULES.items()}
    assert {name: words for name, words in found.items() if words} == {}


def test_no_module_words_anything():
    """Sentences stand in the templates and in the texts that the phone is sent, never in its scripts."""
    sources = (re.sub(r'new Error\("[^"]*"\)', "", without_comments(source)) for source in MODULES.values())
    literals = [literal for source in sources for literal in re.findall(r'"((?:[^"\\\n]|\\.)*)"|`([^`]*)`', source)]
    worded = [text for text in map("".join, literals) if re.search(r"[a-z]{2,} [a-z]{2,}|^[A-Z][a-z]+ ", text)]
    assert worded == ["label strong"]  # two names of the style sheet


def test_each_presenter_and_drawing_is_named_as_the_sites():
    for folder, of_its_own in (("presenters", {"reading_text"}), ("drawings", set())):
        site = {path.stem for path in (PAGES.parents[3] / "check_pages" / folder).rglob("*.py")}
        own = {path.stem for path in (PAGES / folder).rglob("*.js")}
        assert own - site == of_its_own


def test_every_module_of_a_page_is_in_the_script_it_loads():
    sources = {path.stem: path.read_text("utf-8") for path in OF_A_PAGE.glob("*.js") if ".min" not in path.name}
    imported = {name for source in sources.values() for name in re.findall(r'"\./(\w+)\.js"', source)}
    assert set(sources) - imported == {"page"}
