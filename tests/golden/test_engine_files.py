"""The phone's engine as files: the same names and order as Python's, pure and light."""

import ast
import gzip
import re
from pathlib import Path

from tests.golden.node import bundled
from tests.golden.phone_engine import ENGINE, all_regions
from triage import engine
from triage.knowledge.library import library
from triage.knowledge.offline_pack import build_offline_pack

MODULES = {path.stem: path.read_text("utf-8") for path in sorted(ENGINE.rglob("*.js"))}
# Arithmetic that Python brings along.
OF_ITS_OWN = {"arithmetic"}
# What JavaScript needs and Python does not: opening the bundle, making a value that is a class there, a method there.
WITHOUT_A_TWIN = {
    "pack": {"openPack", "BANDS", "stops"},
    "encoding": {"fieldTable"},
    "measured": {"measured"},
    "answers": {"isGiven"},
}
HEAVIEST = 34_000
IMPORT = re.compile(r'^import \{([^}]*)\} from "\.{1,2}/(?:readings/)?(\w+)\.js";$', re.MULTILINE)
REACHES_OUT = (
    r"\b(fetch|Date|performance|random|window|document|self\.|globalThis|console|indexedDB|localStorage|import\()"
)


def without_comments(source):
    return re.sub(r"^\s*//.*$|\s// .*$", "", re.sub(r"/\*.*?\*/", "", source, flags=re.DOTALL), flags=re.MULTILINE)


def test_the_modules_are_named_as_pythons():
    python = {path.stem for path in Path(engine.__file__).parent.rglob("*.py")}
    assert set(MODULES) - OF_ITS_OWN <= python
    assert {"pack", "tables", "model", "belief", "expected_information", "next_question", "safety"} <= set(MODULES)
    assert {"advice", "explanation", "answers", "check", "frequency"} <= set(MODULES)


def names_in(path):
    """What a Python module defines, as JavaScript would write it."""
    tree = list(ast.walk(ast.parse(path.read_text("utf-8"))))
    named = {node.name for node in tree if isinstance(node, ast.FunctionDef | ast.ClassDef)}
    stored = {node.id for node in tree if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store)}
    return {re.sub(r"_(.)", lambda letter: letter[1].upper(), name) for name in named} | stored


def test_what_a_module_exports_is_named_as_in_pythons():
    for path in Path(engine.__file__).parent.rglob("*.py"):
        exported = set(re.findall(r"^export (?:function|const|class) (\w+)", MODULES.get(path.stem, ""), re.MULTILINE))
        assert exported - names_in(path) == WITHOUT_A_TWIN.get(path.stem, set()), path.stem


def test_the_engine_reaches_for_nothing_outside():
    found = {name: re.findall(REACHES_OUT, without_comments(source)) for name, source in MODULES.items()}
    assert {name: words for name, words in found.items() if words} == {}


def test_each_import_names_something_that_is_exported():
    for name, source in MODULES.items():
        for names, module in IMPORT.findall(source):
            exported = set(re.findall(r"^export (?:function|const|class) (\w+)", MODULES[module], re.MULTILINE))
            assert {n.strip() for n in names.split(",") if n.strip()} <= exported, f"{name} from {module}"


def test_engine_and_pack_leave_room_for_the_pages():
    """Of the 120 kB that everything offline may weigh, they take 34 at most."""
    bundle = build_offline_pack(library().pack, all_regions()).text
    weight = sum(len(gzip.compress(text.encode(), 9)) for text in (bundle, bundled(ENGINE / "check.js", "--minify")))
    assert weight <= HEAVIEST
