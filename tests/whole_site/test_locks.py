"""The lock files are what pyproject.toml asks for, with a hash for every package."""

import re
import tomllib

import pytest

from tests.whole_site.project_files import ROOT

PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
EXTRAS = PROJECT["optional-dependencies"]
PIN = re.compile(r"^([a-z0-9._-]+)==([^\s;]+)", re.IGNORECASE | re.MULTILINE)
REQUIREMENT = re.compile(r"([A-Za-z0-9._-]+)(?:\[\w+\])?==(\S+)")


def spelled(name):
    return re.sub(r"[-_.]+", "-", name).lower()


def pins(lock):
    found = PIN.findall((ROOT / ".locks" / lock).read_text("utf-8"))
    return {(spelled(name), version) for name, version in found}


def asked(requirements):
    matches = [REQUIREMENT.fullmatch(text) for text in requirements if not text.startswith(PROJECT["name"])]
    return {(spelled(match[1]), match[2]) for match in matches}


def test_every_direct_dependency_is_pinned_and_locked():
    assert asked(PROJECT["dependencies"]) <= pins("runtime.txt")
    assert asked(PROJECT["dependencies"] + EXTRAS["postgres"]) <= pins("postgres.txt")
    assert asked(EXTRAS["test"] + EXTRAS["postgres"]) <= pins("test.txt")


def test_tests_run_with_exactly_the_packages_of_the_site():
    assert pins("runtime.txt") <= pins("postgres.txt") <= pins("test.txt")


@pytest.mark.parametrize("lock", ["runtime.txt", "postgres.txt", "test.txt"])
def test_every_locked_package_has_a_hash_and_no_address(lock):
    text = (ROOT / ".locks" / lock).read_text("utf-8")
    blocks = re.split(r"\n(?=\S)", text.strip())
    assert all(PIN.match(block) and "--hash=sha256:" in block for block in blocks)
    assert "://" not in text
