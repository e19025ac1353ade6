"""The production server as DEVELOPERS.md starts it, on a free port, with a database of its own."""

import os
import secrets
import socket
import subprocess
import sys
import time
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from tests.running_demo import SETTINGS, free_port
from tests.whole_site.project_files import ROOT

ACCESS_LINE = "%(time)s %(method)s %(status)d %(dt_ms).3f"
START_SECONDS = 30


@dataclass(frozen=True)
class Production:
    port: int
    log: Path
    environment: dict

    @property
    def url(self):
        return f"http://127.0.0.1:{self.port}"

    def said(self):
        return self.log.read_text("utf-8")

    def manage(self, *arguments, code=None):
        command = ["-c", code] if code else ["manage.py", *arguments]
        run = subprocess.run([sys.executable, *command], cwd=ROOT, env=self.environment, capture_output=True, text=True)
        assert run.returncode == 0, run.stderr
        return run.stdout


def environment_of(folder, **changes):
    kept = {name: value for name, value in os.environ.items() if name not in SETTINGS}
    chosen = {
        "DJANGO_SETTINGS_MODULE": "site_config.settings",
        "SECRET_KEY": secrets.token_urlsafe(50),
        "ALLOWED_HOSTS": "127.0.0.1",
        "DATABASE_URL": f"sqlite:///{folder}/oven.sqlite3",
        "HTTPS_ONLY": "0",
        "STATIC_FROM_SOURCE": "1",
        "LOG_FORMAT": "json",
        "TRIAGE_METRICS_ALLOWED_NETWORKS": "127.0.0.1",
        "TRIAGE_METRICS_DIR": f"{folder}/counts",
    }
    return {**kept, **chosen, **changes}


@contextmanager
def production(folder, workers=1, **changes):
    """A running site; every word it and its workers wrote is in `said()`, also after it has stopped."""
    port, log = free_port(), folder / "log"
    site = Production(port, log, environment_of(folder, **changes))
    site.manage("migrate", "-v0")
    command = [Path(sys.executable).with_name("granian"), "--interface", "wsgi", "--host", "127.0.0.1"]
    command += ["--port", str(port), "--workers", str(workers), "--blocking-threads", "2"]
    command += ["--access-log", "--access-log-fmt", ACCESS_LINE, "site_config.wsgi:application"]
    with log.open("w") as out:
        process = subprocess.Popen(command, cwd=ROOT, env=site.environment, stdout=out, stderr=subprocess.STDOUT)
        try:
            _wait_until_open(site, process)
            yield site
        finally:
            process.terminate()
            process.wait(20)


def _wait_until_open(site, process):
    last = time.monotonic() + START_SECONDS
    while time.monotonic() < last and process.poll() is None:
        with socket.socket() as probe:
            if probe.connect_ex(("127.0.0.1", site.port)) == 0:
                return
        time.sleep(0.05)
    raise AssertionError(f"The server did not start:\n{site.said()}")
