"""Many modules as one script, as a browser runs it."""

import re

import pytest

from tests.offline.minifying import OF_A_PAGE, PAGES
from tests.offline.one_script import as_one_script


@pytest.fixture
def modules(tmp_path):
    """Writes modules by name; gives back their paths in that order."""

    def write(**sources):
        for name, source in sources.items():
            (tmp_path / f"{name}.js").write_text(source, "utf-8")
        return [tmp_path / f"{name}.js" for name in sources]

    return write


def run(page, script):
    page.evaluate("() => { window.found = []; }")
    page.add_script_tag(content=script)
    page.wait_for_timeout(0)
    return page.evaluate("() => window.found")


def test_one_name_in_two_modules_stands_for_two_things(page, modules):
    first, second = modules(
        first='const name = "first";\nfound.push(name);\n', second='const name = "second";\nfound.push(name);\n'
    )
    assert run(page, as_one_script([first, second])) == ["first", "second"]
    assert page.evaluate("() => typeof module0") == "undefined"


def test_what_is_imported_runs_once_and_before_at_once_or_when_asked_for(page, modules):
    _, one, other = modules(
        shared='found.push("shared");\nexport const word = "word";\nexport async function later() { return word; }\n',
        one='import { word } from "./shared.js";\nfound.push(word);\n',
        other='import("./shared.js").then(({ later }) => later()).then((word) => found.push(word));\n',
    )
    assert run(page, as_one_script([one, other])) == ["shared", "word", "word"]


def test_one_that_fails_stops_no_other(page, modules):
    failing, other = modules(failing='throw new Error("on purpose");\n', other='found.push("other");\n')
    assert run(page, as_one_script([failing, other])) == ["other"]


def test_every_module_of_the_pages_is_an_entry_or_imported_by_one():
    sources = {path.stem: path.read_text("utf-8") for path in PAGES.glob("*.js") if ".min" not in path.name}
    imported = {name for source in sources.values() for name in re.findall(r'"\./(\w+)\.js"', source)}
    assert set(sources) == {*OF_A_PAGE, *imported}
