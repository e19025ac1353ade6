"""Django's own list for production is clean, and what is silenced on it is answered elsewhere."""

import os
import subprocess
import sys

from django.conf import settings

from tests.whole_site.project_files import ROOT

PRODUCTION = {
    "SECRET_KEY": "".join(chr(33 + 7 * n % 90) for n in range(60)),
    "ALLOWED_HOSTS": "check.example",
    "DATABASE_URL": "sqlite:///:memory:",
}


def deploy_check(**environment):
    kept = {name: os.environ[name] for name in ("PATH", "HOME", "LANG") if name in os.environ}
    command = [sys.executable, "-W", "error", "manage.py", "check", "--deploy", "--fail-level", "DEBUG"]
    return subprocess.run(command, cwd=ROOT, env={**kept, **PRODUCTION, **environment}, capture_output=True, text=True)


def test_it_finds_nothing():
    run = deploy_check()
    assert (run.returncode, run.stderr) == (0, "")
    assert "no issues" in run.stdout


def test_it_can_find_something():
    assert "security.W008" in deploy_check(HTTPS_ONLY="0").stderr


def test_what_is_silenced_is_these_four():
    assert settings.SILENCED_SYSTEM_CHECKS == ["security.W002", "security.W003", "security.W005", "security.W021"]
