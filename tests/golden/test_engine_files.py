"""The phone's engine as files: the same names and order as Python's, pure and light."""

import gzip
import re
from pathlib import Path

from tests.golden.node import bundled
from tests.golden.phone_engine import ENGINE, all_regions
from triage import engine
from triage.knowledge.library import library
from triage.knowledge.offline_pack import build_offline_pack

MODULES = {path.stem: path.read_text("utf-8") for path in sorted(ENGINE.rglob("*.js"))}
# Arithmetic that Python brings along, and the part of `model.py` that would make its file too long.
OF_ITS_OWN = {"arithmetic", "tables"}
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
    assert {"pack", "model", "belief", "expected_information", "next_question", "safety"} <= set(MODULES)
    assert {"advice", "explanation", "trail", "check", "frequency"} <= set(MODULES)


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
