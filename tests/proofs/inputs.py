"""Which files a proof's result depends on, and one hash of them all that is the same on every machine."""

import ast
import hashlib
import re
from functools import cache
from pathlib import Path

from tests.proofs.registry import Proof
from tests.whole_site.project_files import ROOT, project_files

OWN = ("triage", "tests", "site_config", "fixtures_demo")
# Every proof depends on the packages it runs with and on what every test is given.
ALWAYS = (".locks/test.txt", "tests/conftest.py", "tests/settings.py")


def inputs_of(proof: Proof, root: Path = ROOT) -> list[Path]:
    """The files, relative to `root`, in order."""
    every = project_files(root)
    starts = [path for path in every if path.suffix == ".py" and matches(path, proof.modules)]
    python = _followed(root, set(every), [*map(Path, proof.tests), *starts])
    data = {path for path in every if matches(path, proof.data) and path.suffix not in (".py", ".md")}
    return sorted(python | data | {Path(name) for name in ALWAYS if (root / name).is_file()})


def fingerprint(proof: Proof, root: Path = ROOT) -> str:
    """What the lock keeps of the files a proof depends on."""
    return hash_of(root, inputs_of(proof, root))


def hash_of(root: Path, paths: list[Path]) -> str:
    """The SHA-256 of names and contents; line endings do not count, nor where the project lies."""
    digest = hashlib.sha256()
    for path in paths:
        content = (root / path).read_bytes()
        if b"\0" not in content:
            content = content.replace(b"\r\n", b"\n")
        digest.update(f"{path.as_posix()}\0{len(content)}\0".encode())
        digest.update(content)
    return digest.hexdigest()


def matches(path: Path, patterns: tuple[str, ...]) -> bool:
    """Whether the last pattern that fits lets the file in."""
    fitting = [pattern for pattern in patterns if _expression(pattern.lstrip("!")).fullmatch(path.as_posix())]
    return bool(fitting) and not fitting[-1].startswith("!")


@cache
def _expression(pattern: str) -> re.Pattern[str]:
    """`**` stands for folders and files below, `*` for a part of one name."""
    return re.compile(".*".join(re.escape(part).replace(r"\*", "[^/]*") for part in pattern.split("**")))


def _followed(root: Path, every: set[Path], starts: list[Path]) -> set[Path]:
    """These files and all of ours that they import, and so on."""
    found: set[Path] = set()
    waiting = list(starts)
    while waiting:
        path = waiting.pop()
        if path not in found:
            found.add(path)
            names = _names_imported((root / path).read_bytes())
            waiting += every.intersection(file for name in names for file in _possible_files(name))
    return found


@cache
def _names_imported(source: bytes) -> tuple[str, ...]:
    """Our own modules that a file imports anywhere; a name taken from a package may be a module of it."""
    names: list[str] = []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module:
            names += [node.module, *(f"{node.module}.{alias.name}" for alias in node.names)]
    return tuple(name for name in names if name.split(".")[0] in OWN)


@cache
def _possible_files(name: str) -> tuple[Path, ...]:
    """Where the module may be, and the `__init__.py` of each package above it."""
    parts = name.split(".")
    packages = [Path(*parts[:depth], "__init__.py") for depth in range(1, len(parts) + 1)]
    return (Path(*parts).with_suffix(".py"), *packages)
