"""`manage.py pack`: one word for each question, and one clear message with exit code 2 when something is wrong."""

import subprocess
import sys

import pytest
from django.core.management import CommandError, call_command

from tests.whole_site.project_files import ROOT
from triage.knowledge.problems import PackProblems, Problem
from triage.management.commands import pack
from triage.management.pack_commands import unverified


def test_every_word_is_one_question_with_a_line_of_help():
    words = [question.NAME for question in pack.QUESTIONS]
    assert len(set(words)) == len(words)
    assert all(question.HELP for question in pack.QUESTIONS)


def test_every_module_of_questions_is_listed():
    folder = ROOT / "triage" / "management" / "pack_commands"
    modules = {path.stem for path in folder.glob("*.py") if "\nNAME = " in path.read_text("utf-8")}
    assert {question.__name__.rpartition(".")[2] for question in pack.QUESTIONS} == modules


def test_a_broken_pack_is_told_with_its_file_and_line(monkeypatch):
    def broken():
        raise PackProblems([Problem("faults.yaml", 7, "lamp-failed", "has no calls.", "Give a number.")])

    monkeypatch.setattr(unverified, "library", broken)
    with pytest.raises(CommandError, match=r"^faults\.yaml:7: lamp-failed: has no calls\. Give a number\.$") as refused:
        call_command("pack", "unsure")
    assert refused.value.returncode == 2


def test_the_terminal_gets_one_sentence_and_exit_code_two():
    asked = [sys.executable, "manage.py", "pack", "unsure", "--region", "moon"]
    run = subprocess.run(asked, cwd=ROOT, capture_output=True, text=True)
    assert run.returncode == 2
    assert run.stdout == ""
    assert run.stderr.startswith("CommandError: There is no region moon. Known: ")
    assert run.stderr.count("\n") == 1
