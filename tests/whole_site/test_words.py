"""Words that stand nowhere in the project: unfinished work, the machine it was made on, package hosts.

Each pattern is put together from pieces, so that this file does not contain what it forbids.
"""

import re

import pytest

from tests.whole_site.project_files import project_files, text_of

EVERYWHERE = {
    "where it grew from": ["trans" + "cript", "seed " + "document", "seed " + "file", "video" + "-0"],
    "a package host": [
        "py" + r"pi\.org",
        "python" + "hosted",
        r"registry\." + "npmjs",
        r"deb\." + "debian",
    ],
    "a folder of one machine": [
        r"(?<![a-z.])/" + f"({'|'.join(['work', 'farm', 'root'])})" + r"/[a-z.]",
        "/tmp/" + "brief",
    ],
    "an issue number": ["(issue|ticket)s? " + "#[0-9]"],
}
IN_SOURCES = ["TO" + "DO", "FIX" + "ME", "X" + "XX", "Not" + "ImplementedError"]
SKIPPED = [r"pytest\.mark\." + "(skip|xfail)", r"pytest\." + r"(skip|xfail|importorskip)\("]
SOURCES = {".py", ".js", ".html", ".css", ".yaml", ".svg"}


def places(pattern, paths, flags=0):
    search = re.compile(pattern, flags)
    return [
        f"{path}:{number}: {line.strip()[:100]}"
        for path in paths
        for number, line in enumerate(text_of(path).splitlines(), 1)
        if search.search(line)
    ]


@pytest.mark.parametrize("kind", EVERYWHERE)
def test_no_file_names(kind):
    assert places("|".join(EVERYWHERE[kind]), project_files(), re.IGNORECASE) == []


@pytest.mark.parametrize("pattern", [*IN_SOURCES, *SKIPPED])
def test_no_source_is_unfinished_and_no_test_is_passed_over(pattern):
    sources = [path for path in project_files() if path.suffix in SOURCES]
    assert places(rf"(?<!\w){pattern}", sources) == []


def test_no_file_name_says_it_either():
    forbidden = re.compile("|".join(pattern for kind in EVERYWHERE.values() for pattern in kind), re.IGNORECASE)
    assert [path for path in project_files() if forbidden.search(path.as_posix())] == []
