"""Modules as one classic script: one after the other, without comments, imports and exports.

Not every browser starts a service worker from ES modules, and one file is fetched once. No module reaches outside
and no two use one name at their top level (`tests/offline/test_page_script.py`), so nothing has to be renamed.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

import triage

OFFLINE = Path(triage.__file__).parent / "static" / "triage" / "offline"
ENGINE = OFFLINE / "engine"
DIGEST_LENGTH = 16

_IMPORT = re.compile(r'^import \{[^}]*\} from "([^"]+)";\n', re.MULTILINE)
_COMMENTS = re.compile(r"/\*.*?\*/|\s+// [^\n]*", re.DOTALL)
_EXPORT = re.compile(r"^export ", re.MULTILINE)
_INDENT = re.compile(r"\n\s*")


@dataclass(frozen=True, slots=True)
class ClassicScript:
    """The script and its `version`, which changes with any of its bytes."""

    text: str
    version: str


def joined(entry: Path) -> ClassicScript:
    """Every module that the entry needs, each after those it imports."""
    text = '"use strict";' + "".join(_bare(source) for source in _in_order(entry, {}).values()) + "\n"
    return ClassicScript(text, sha256(text.encode()).hexdigest()[:DIGEST_LENGTH])


def _in_order(module: Path, before: Mapping[Path, str]) -> dict[Path, str]:
    """The modules read so far, then what `module` imports, then `module`."""
    found = dict(before)
    source = module.read_text("utf-8")
    for imported in _imports(module, source):
        if imported not in found:
            found = _in_order(imported, found)
    return {**found, module: source}


def _imports(module: Path, source: str) -> Iterator[Path]:
    for address in _IMPORT.findall(source):
        yield (module.parent / address).resolve()


def _bare(source: str) -> str:
    return _INDENT.sub("\n", _EXPORT.sub("", _IMPORT.sub("", _COMMENTS.sub("", source)))).rstrip()
