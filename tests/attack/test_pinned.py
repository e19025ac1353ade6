"""What runs on a server is what was looked at: every package in one version, by its hash, and the linter's security
rules are on."""

import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from tests.whole_site.project_files import ROOT

PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
RUNTIME = (ROOT / ".locks" / "runtime.txt").read_text("utf-8")
PIN = re.compile(
    r"^(?P<name>[a-z0-9-]+)==(?P<version>[0-9][^ ;\\]*)(?P<rest>.*?)(?=^[a-z0-9-]+==|\Z)", re.MULTILINE | re.DOTALL
)
# Bandit's rules that the project leaves off somewhere, and why (see pyproject.toml).
LEFT_OFF = {"tests/**": "S", "site_config/first_run.py": "S603, S606"}


def pins():
    return {found["name"]: found for found in PIN.finditer(RUNTIME)}


@pytest.mark.parametrize("lock", ["runtime.txt", "postgres.txt", "test.txt"])
def test_every_package_has_one_version_and_its_hashes(lock):
    text = (ROOT / ".locks" / lock).read_text("utf-8")
    found = list(PIN.finditer(text))
    assert len(found) >= 10
    loose = [line for line in text.splitlines() if line and not line.startswith((" ", "#")) and "==" not in line]
    assert loose == []
    assert [pin["name"] for pin in found if "--hash=sha256:" not in pin["rest"]] == []


def test_what_the_project_names_is_pinned_to_what_it_names():
    for wanted in PROJECT["project"]["dependencies"]:
        name, _, version = wanted.partition("==")
        assert version, wanted
        assert pins()[name.partition("[")[0].lower()]["version"] == version


def test_the_linters_security_rules_are_on_and_find_nothing():
    """Ruff's S rules are Bandit's."""
    assert "S" in PROJECT["tool"]["ruff"]["lint"]["select"]
    assert not any(rule.startswith("S") and rule[1:].isdigit() for rule in PROJECT["tool"]["ruff"]["lint"]["ignore"])
    own = PROJECT["tool"]["ruff"]["lint"]["per-file-ignores"]
    left = {path: [rule for rule in rules if re.fullmatch(r"S\d*", rule)] for path, rules in own.items()}
    assert {path: ", ".join(rules) for path, rules in left.items() if rules} == LEFT_OFF
    ruff = Path(sys.executable).with_name("ruff")
    places = [ROOT / folder for folder in ("triage", "site_config", "fixtures_demo")]
    run = subprocess.run([ruff, "check", "--select", "S", *places], cwd=ROOT, capture_output=True, text=True)
    assert run.returncode == 0, run.stdout
