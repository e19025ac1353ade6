"""Each wrong import would break the arrows; `tests/run` asks whether they hold."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.whole_site.project_files import ROOT

WRONG_IMPORTS = {
    "knowledge reaches up": ("triage/knowledge/reader.py", "import triage.web"),
    "an audience reads another": ("triage/desk/__init__.py", "import triage.household"),
    "the engine knows Django": ("triage/engine/step.py", "import django.http"),
    "knowledge knows Django": ("triage/knowledge/reader.py", "from django.conf import settings"),
    "the engine reads files": ("triage/engine/step.py", "import pathlib"),
    "the engine throws dice": ("triage/engine/step.py", "from random import choice"),
    "the engine reads the clock": ("triage/engine/step.py", "import datetime"),
    "the engine reads YAML": ("triage/engine/step.py", "import yaml"),
    "the package knows the site": ("triage/web/rendering.py", "import site_config.settings"),
    "an unlisted folder": ("triage/drawer/__init__.py", ""),
}


def lint(folder):
    program = Path(sys.executable).with_name("lint-imports")
    return subprocess.run([program, "--no-cache", "--no-logo"], cwd=folder, capture_output=True, text=True)


@pytest.fixture
def skeleton(tmp_path):
    """The smallest tree the contracts accept, with the project's own contracts."""
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    for package in ("engine", "knowledge", "authoring", "web", "household"):
        write(tmp_path / "triage" / package / "__init__.py", "")
    write(tmp_path / "triage" / "__init__.py", "")
    write(tmp_path / "site_config" / "__init__.py", "")
    write(tmp_path / "site_config" / "settings.py", "")
    return tmp_path


def write(path, text):
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")


def test_a_clean_skeleton_passes(skeleton):
    run = lint(skeleton)
    assert run.returncode == 0, run.stdout + run.stderr


@pytest.mark.parametrize("mistake", WRONG_IMPORTS)
def test_each_wrong_import_breaks_them(skeleton, mistake):
    place, line = WRONG_IMPORTS[mistake]
    write(skeleton / place, line + "\n")
    run = lint(skeleton)
    assert run.returncode == 1, run.stdout + run.stderr
    assert "BROKEN" in run.stdout or "not listed" in run.stdout + run.stderr
