"""A server made as the guide says it, in a folder: a copy of the code stands in for the server's, a SQLite file for its
database, and the tester for its user."""

import os
import re
import secrets
import shutil
import subprocess
import sys
from dataclasses import dataclass, field
from pathlib import Path

from tests.operations.server_guide import CODE, COUNTS_FOLDER, SETTINGS_FILE, manage_program, settings_text
from tests.whole_site.project_files import ROOT

PARTS = ("manage.py", "site_config", "triage", "fixtures_demo", ".locks")


@dataclass(frozen=True)
class GuidedHost:
    """`folder` is the whole server; `says` is what each command of the guide said."""

    folder: Path
    says: dict = field(default_factory=dict)

    @property
    def code(self):
        return self.folder / "code"

    @property
    def shell(self):
        """A fresh shell's environment, which knows no setting."""
        return {"PATH": f"{self.folder}:{os.environ['PATH']}", "HOME": str(self.folder)}

    def here(self, text):
        """The guide's words with this host's places in them."""
        places = {
            f"{CODE}/.venv": ".venv",
            CODE: str(self.code),
            SETTINGS_FILE: f"{self.folder}/settings",
            "runuser -u oven -- ": "",
            ".venv/bin/": f"{Path(sys.executable).parent}/",
        }
        for theirs, ours in places.items():
            text = text.replace(theirs, ours)
        return text

    def run(self, *text, **environment):
        surroundings = {**self.shell, **environment}
        run = subprocess.run(text, cwd=self.code, env=surroundings, capture_output=True, text=True)
        assert run.returncode == 0, f"{text}\n{run.stdout}\n{run.stderr}"
        return run.stdout

    def run_line(self, line):
        """As an operator types it."""
        return self.run("bash", "-c", line)

    def as_a_unit(self, text):
        """The command that runs these words with the settings file, as systemd does."""
        return ["bash", "-c", f'set -a; . {self.folder}/settings; exec "$@"', "bash", *text]


def made_host(folder):
    """The code, the settings and `oven-manage` in their places; nothing has been run yet."""
    host = GuidedHost(folder)
    host.code.mkdir()
    for part in PARTS:
        copy = shutil.copytree if (ROOT / part).is_dir() else shutil.copy
        copy(ROOT / part, host.code / part)
    (folder / "settings").write_text(_filled_in(settings_text(), folder))
    program = folder / "oven-manage"
    program.write_text(host.here(manage_program()))
    program.chmod(0o755)
    return host


def _filled_in(settings, folder):
    """The settings file with secrets of its own; only the database is another."""
    filled = re.sub(r"=\.\.\.$", lambda _: f"={secrets.token_urlsafe(50)}", settings, flags=re.MULTILINE)
    database = re.compile(r"^DATABASE_URL=postgres://.*$", re.MULTILINE)
    assert filled.count("...") == 0
    assert len(database.findall(filled)) == 1
    return database.sub(f"DATABASE_URL=sqlite:///{folder}/oven.sqlite3", filled).replace(
        COUNTS_FOLDER, f"{folder}/counts"
    )
