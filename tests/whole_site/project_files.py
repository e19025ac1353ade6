"""The project's own files, for the tests that look at all of them.

Read from the folder rather than from git, so that a copy without history is judged alike: everything except
what `.gitignore` names.
"""

import os
from fnmatch import fnmatch
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def ignored_names():
    return [line.rstrip("/") for line in (ROOT / ".gitignore").read_text("utf-8").split() if line] + [".git"]


@cache
def project_files(root=ROOT):
    """Every file below `root`, relative to it, in a fixed order."""
    ignored = ignored_names()

    def wanted(names):
        return sorted(name for name in names if not any(fnmatch(name, pattern) for pattern in ignored))

    found = []
    for folder, subfolders, files in os.walk(root):
        subfolders[:] = wanted(subfolders)
        found += [(Path(folder) / name).relative_to(root) for name in wanted(files)]
    return found


def files_ending(*suffixes):
    return [path for path in project_files() if path.suffix in suffixes]


def text_of(path):
    """The text of a project file, or nothing for a picture or another file that is not text."""
    content = (ROOT / path).read_bytes()
    return "" if b"\0" in content else content.decode("utf-8")
