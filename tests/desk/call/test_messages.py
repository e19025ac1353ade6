"""Every sentence a script of a call's page may show is brought along by that page."""

import re
from pathlib import Path

import pytest

import triage

SCRIPTS = Path(triage.__file__).parent / "static/triage/call"
TEMPLATES = Path(triage.__file__).parent / "templates/triage/call"
IMPORT = re.compile(r'from "\./(\w+\.js)"')
SENTENCE = re.compile(r'message\(\s*"([a-z-]+)"|message\([^")]*\? "([a-z-]+)" : "([a-z-]+)"')
STATES = {"held", "interrupted", "ended"}


def modules_of(name, found=()):
    """The script and everything it imports."""
    if name in found:
        return set(found)
    found = {*found, name}
    for other in IMPORT.findall((SCRIPTS / name).read_text("utf-8")):
        found |= modules_of(other, found)
    return found


@pytest.mark.parametrize(
    ("page", "scripts", "more"),
    [
        (("call.html", "_saved_calls.html"), ("page.js",), STATES),
        (("booking.html",), ("booking.js",), set()),
        (("confirmation.html",), ("confirmation.js",), set()),
        (("previous_sheet.html",), ("form_shortcuts.js",), set()),
    ],
)
def test_a_page_brings_the_sentences_of_its_scripts(page, scripts, more):
    brought = set(re.findall(r'data-name="([a-z-]+)"', "".join((TEMPLATES / name).read_text("utf-8") for name in page)))
    modules = set().union(*(modules_of(script) for script in scripts))
    text = "".join((SCRIPTS / name).read_text("utf-8") for name in modules)
    used = {name for names in SENTENCE.findall(text) for name in names if name} | more
    if "page.js" in modules:
        assert brought == used
    assert used - brought <= LEFT_TO_OTHER_PAGES[page[0]]


# What shared modules can say, and this page never lets them.
LEFT_TO_OTHER_PAGES = {
    "call.html": set(),
    "booking.html": {"copied", "not-copied", "merged", "online"},
    "confirmation.html": set(),
    "previous_sheet.html": {"copied", "not-copied"},
}
