"""Every test written is a test run, and every module with behaviour has its test file."""

import ast
from collections import Counter
from pathlib import Path

from tests.whole_site.project_files import ROOT, files_ending, text_of

FUNCTIONS = (ast.FunctionDef, ast.AsyncFunctionDef)

# Folders of tests that look at more than one module of `triage`.
ACROSS = {
    "whole_site",
    "safety",
    "bench",
    "site_config",
    "fixtures_demo",
    "browser",
    "golden",
    "published",
    "attack",
    "releases",
}
# What Django or Python writes or calls by itself; the pages' own tests go through these.
DECLARATIONS = {"__init__.py", "apps.py", "admin.py", "urls.py"}
# Inner parts of a larger module, which its tests reach: the part, and the test file that does.
SEEN_THROUGH: dict[str, str] = {}


def trees(folder):
    return [(path, ast.parse(text_of(path))) for path in files_ending(".py") if path.parts[0] == folder]


def has_behaviour(tree):
    return any(isinstance(node, FUNCTIONS) for node in ast.walk(tree))


def is_test(node):
    return isinstance(node, FUNCTIONS) and node.name.startswith("test_")


def test_a_test_stands_only_where_pytest_looks():
    lost = []
    for path, tree in trees("tests"):
        classes = [node for node in ast.walk(tree) if isinstance(node, ast.ClassDef)]
        holders = [node.name for node in classes if any(is_test(child) for child in node.body)]
        lost += [f"{path}: class {name}" for name in holders if not name.startswith("Test")]
        has_tests = holders or any(is_test(node) for node in tree.body)
        if has_tests and not path.name.startswith("test_"):
            lost.append(f"{path}: the file's name does not begin with test_")
        if path.name.startswith("test_") and not has_tests:
            lost.append(f"{path}: no test in it")
    assert lost == []


def test_no_test_hides_another_of_the_same_name():
    hidden = []
    for path, tree in trees("tests"):
        for scope in [tree, *(node for node in ast.walk(tree) if isinstance(node, ast.ClassDef))]:
            names = Counter(node.name for node in scope.body if is_test(node))
            hidden += [f"{path}: {name}" for name, count in names.items() if count > 1]
    assert hidden == []


def mirror_of(path):
    place = Path("tests", *path.parts[1:])
    return Path(SEEN_THROUGH.get(path.as_posix(), place.with_name(f"test_{place.name}")))


def test_every_module_with_behaviour_has_its_test_file():
    untested = [
        f"{path} has no {mirror_of(path)}"
        for path, tree in trees("triage")
        if path.name not in DECLARATIONS and "migrations" not in path.parts and has_behaviour(tree)
        if not (ROOT / mirror_of(path)).exists()
    ]
    assert untested == []


def test_every_part_seen_through_another_test_still_exists():
    assert [part for part in SEEN_THROUGH if not (ROOT / part).exists()] == []


def test_every_folder_of_tests_mirrors_a_folder_of_the_package():
    astray = [
        path
        for path, _ in trees("tests")
        if len(path.parts) > 2
        and path.parts[1] not in ACROSS
        and not (ROOT / "triage" / Path(*path.parts[1:-1])).is_dir()
    ]
    assert astray == []
