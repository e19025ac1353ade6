"""A file, a function and a template each stay small enough to be read at one sitting."""

import ast

from tests.whole_site.project_files import files_ending, text_of

FILE_STOPS_AT = 300
FUNCTION_STOPS_AT = 40
PAGE_STOPS_AT = 100
FRAGMENT_STOPS_AT = 60


def too_long(paths, stop):
    sizes = {path: len(text_of(path).splitlines()) for path in paths}
    return [f"{path}: {size} lines, {stop} allowed" for path, size in sizes.items() if size > stop]


def test_no_file_of_code_is_too_long():
    code = [path for path in files_ending(".py", ".js", ".css") if ".min." not in path.name]
    assert too_long(code, FILE_STOPS_AT) == []


def test_no_function_is_too_long():
    long = []
    for path in files_ending(".py"):
        for node in ast.walk(ast.parse(text_of(path))):
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
                size = node.end_lineno - node.lineno + 1
                if size > FUNCTION_STOPS_AT:
                    long.append(f"{path}:{node.lineno}: {node.name} has {size} lines")
    assert long == []


def test_no_template_is_too_long():
    templates = files_ending(".html")
    fragments = [path for path in templates if path.name.startswith("_")]
    pages = [path for path in templates if not path.name.startswith("_")]
    assert too_long(fragments, FRAGMENT_STOPS_AT) + too_long(pages, PAGE_STOPS_AT) == []
