"""`manage.py pack`: one subcommand a module, and one clear message with exit code 2 when something is wrong."""

import subprocess
import sys

import pytest
from django.core.management import CommandError, call_command

from tests.whole_site.project_files import ROOT
from triage.knowledge.problems import PackProblem, PackProblems
from triage.management.commands import pack
from triage.management.pack_commands import unverified


def test_every_subcommand_has_a_name_of_its_own_and_a_line_of_help():
    names = [command.NAME for command in pack.COMMANDS]
    assert len(set(names)) == len(names)
    assert all(command.HELP for command in pack.COMMANDS)


def test_every_module_of_subcommands_is_listed():
    folder = ROOT / "triage" / "management" / "pack_commands"
    modules = {path.stem for path in folder.glob("*.py") if "\nNAME = " in path.read_text("utf-8")}
    assert {command.__name__.rpartition(".")[2] for command in pack.COMMANDS} == modules


def test_a_broken_pack_is_told_with_its_file_and_line(monkeypatch):
    def broken():
        raise PackProblems([PackProblem("faults.yaml", 7, "lamp-failed", "has no calls.", "Give a number.")])

    monkeypatch.setattr(unverified, "library", broken)
    with pytest.raises(CommandError, match=r"^faults\.yaml:7: lamp-failed: has no calls\. Give a number\.$") as refused:
        call_command("pack", "unverified")
    assert refused.value.returncode == 2


def test_the_terminal_gets_one_sentence_and_exit_code_two():
    asked = [sys.executable, "manage.py", "pack", "unverified", "--region", "moon"]
    run = subprocess.run(asked, cwd=ROOT, capture_output=True, text=True)
    assert run.returncode == 2
    assert run.stdout == ""
    assert run.stderr.startswith("CommandError: There is no region moon. Known: ")
    assert run.stderr.count("\n") == 1


def test_it_needs_no_settings_of_a_site():
    """Nothing in the environment: no SECRET_KEY, no DJANGO_SETTINGS_MODULE, no DATABASE_URL."""
    asked = [sys.executable, "manage.py", "pack", "unverified", "--region", "us"]
    run = subprocess.run(asked, cwd=ROOT, env={}, capture_output=True, text=True)
    assert (run.returncode, run.stderr) == (0, "")
    assert run.stdout.endswith(" facts to confirm.\n")


def test_it_begins_with_the_region_of_the_site_where_the_environment_names_one():
    asked = [sys.executable, "manage.py", "pack", "explain", "complaint=no-heat"]
    run = subprocess.run(asked, cwd=ROOT, env={"TRIAGE_DEFAULT_REGION": "us"}, capture_output=True, text=True)
    assert run.stdout.splitlines()[0].endswith(", region us")
