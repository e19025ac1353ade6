"""`manage.py demo` as a person starts it: in a session of its own, on a free port, with a folder of its own."""

import os
import signal
import socket
import subprocess
import sys
from contextlib import contextmanager

from tests.whole_site.project_files import ROOT

SETTINGS = (
    "DJANGO_SETTINGS_MODULE",
    "DATABASE_URL",
    "SECRET_KEY",
    "ALLOWED_HOSTS",
    "HTTPS_ONLY",
    "STATIC_FROM_SOURCE",
    "DEMO",
)


def free_port():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


@contextmanager
def demo(port, temporary, *arguments):
    """A running demo in a session of its own, with everything it printed until it was up."""
    chosen = {"TMPDIR": str(temporary)}
    kept = {name: value for name, value in os.environ.items() if name not in (*SETTINGS, "PYTHONUNBUFFERED")}
    process = subprocess.Popen(
        [sys.executable, "manage.py", "demo", "--port", str(port), *arguments],
        cwd=ROOT,
        env={**kept, **chosen},
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        start_new_session=True,
    )
    with process:
        try:
            yield process
        finally:
            if process.poll() is None:
                os.killpg(process.pid, signal.SIGKILL)


def words_until_up(process):
    lines = []
    for line in process.stdout:
        lines.append(line.rstrip())
        if line.startswith("Press Ctrl-C"):
            break
    return lines
