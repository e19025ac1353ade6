"""Every test written is a test run."""

import ast
from collections import Counter

from tests.whole_site.project_files import files_ending, text_of

FUNCTIONS = (ast.FunctionDef, ast.AsyncFunctionDef)


def trees(folder):
    return [(path, ast.parse(text_of(path))) for path in files_ending(".py") if path.parts[0] == folder]


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
