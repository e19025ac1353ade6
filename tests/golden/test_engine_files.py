"""The phone's engine as files: the same names and order as Python's, pure, light, and ready to be one script."""

import gzip
import re
from collections import Counter
from pathlib import Path

from tests.golden.phone_engine import ENGINE, all_regions
from triage import engine
from triage.knowledge.library import library
from triage.knowledge.phone_pack import phone_pack
from triage.offline.classic_script import joined

MODULES = {path.stem: path.read_text("utf-8") for path in sorted(ENGINE.rglob("*.js"))}
# Arithmetic that Python brings along, and the part of `model.py` that would make its file too long.
OF_ITS_OWN = {"arithmetic", "tables"}
HEAVIEST = 40_000
IMPORT = re.compile(r'^import \{([^}]*)\} from "\.{1,2}/(?:readings/)?(\w+)\.js";$', re.MULTILINE)
TOP_LEVEL = re.compile(r"^(?:export )?(?:function|const|let|class) (\w+)", re.MULTILINE)
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


def test_no_two_modules_use_one_name_so_that_they_can_become_one_classic_script():
    names = Counter(name for source in MODULES.values() for name in TOP_LEVEL.findall(without_comments(source)))
    assert [name for name, times in names.items() if times > 1] == []
    assert all(line.startswith("import {") for s in MODULES.values() for line in s.splitlines() if "import" in line[:6])


def test_engine_and_pack_leave_room_for_the_pages():
    """Of the 120 kB that everything offline may weigh, they take 40 at most."""
    bundle = phone_pack(library().pack, all_regions()).text
    weight = sum(len(gzip.compress(text.encode(), 9)) for text in (bundle, joined(ENGINE / "check.js").text))
    assert weight <= HEAVIEST
