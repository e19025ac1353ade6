"""Backup and restore as the guide says it: what comes back is what was there, and the links people hold still open."""

import os
import re
import secrets
import shlex
import sqlite3
import subprocess
import sys
from threading import Event, Thread

import pytest

from tests.bench.postgres import postgres
from tests.operations.production import environment_of
from tests.operations.server_guide import blocks
from tests.whole_site.project_files import ROOT

WRITE = """
import django; django.setup()
from tests.firm_builders import make_booking, make_firm, make_job_sheet
from tests.jobsheet.pictures import jpeg
firm = make_firm(slug="hearth")
for number in range(3):
    make_job_sheet(firm, booking=make_booking(name=f"Alex {number}", photo=jpeg(80, 60)))
"""
TELL = """
import django; django.setup()
import hashlib, json
from django.core import serializers
from triage.household.sheet_address import sheet_address
from triage.models import AuditEntry, Delivery, Firm, JobSheet, RatingPlatePhoto
rows = [row for kind in (Firm, JobSheet, RatingPlatePhoto, Delivery, AuditEntry) for row in kind.objects.order_by("pk")]
print(hashlib.sha256(serializers.serialize("json", rows).encode()).hexdigest(), len(rows))
print(sheet_address(JobSheet.objects.first()))
"""
OPEN = """
import sys, django; django.setup()
from django.test import Client
from triage.operations.readiness import not_ready_reason
print(not_ready_reason() or "ready", Client().get(sys.argv[1]).status_code)
"""


@pytest.fixture
def key():
    return secrets.token_urlsafe(50)


def python(environment, code, *text):
    command = [sys.executable, "-c", code, *text]
    kept = {**environment, "ALLOWED_HOSTS": "testserver,check.example", "LOG_FORMAT": "text"}
    run = subprocess.run(command, cwd=ROOT, env=kept, capture_output=True, text=True)
    assert run.returncode == 0, run.stderr
    return run.stdout


def lines_with(text):
    """The guide's own lines; as whom each runs is left to who runs the tests."""
    lines = [line for code in blocks("sh") for line in code.splitlines() if text in line]
    assert lines
    return [re.sub(r"runuser -u (oven|postgres) -- ", "", line) for line in lines]


def run_lines(server, folder, lines):
    programs = f"{server.program}:{os.environ['PATH']}"
    there = {**os.environ, "PATH": programs, "PGHOST": "127.0.0.1", "PGPORT": str(server.port), "PGUSER": "postgres"}
    for line in lines:
        subprocess.run(["bash", "-e", "-c", line], cwd=folder, env=there, check=True)


def migrate(environment):
    subprocess.run([sys.executable, "manage.py", "migrate", "-v0"], cwd=ROOT, env=environment, check=True)


def same_site(folder, key, url):
    return environment_of(folder, DATABASE_URL=url, SECRET_KEY=key)


def test_postgresql_comes_back_whole(tmp_path, key):
    with postgres() as server:
        place = server.url().removesuffix("postgres")
        run_lines(server, tmp_path, lines_with("createuser"))
        old = same_site(tmp_path, key, place + "oven")
        migrate(old)
        python(old, WRITE)
        before = python(old, TELL)
        run_lines(server, tmp_path, lines_with("pg_dump") + lines_with("oven_new"))
        assert (tmp_path / "oven.dump").stat().st_mode & 0o077 == 0  # it holds names
        new = same_site(tmp_path, key, place + "oven_new")
        python(old, "import django; django.setup(); from triage.models import *; JobSheet.objects.update(name='gone')")
        assert python(new, TELL) == before
        assert python(new, OPEN, before.split()[-1]) == "ready 200\n"
        migrate(new)


def test_sqlite_is_copied_whole_while_it_is_written_to(tmp_path, key):
    file, copy = tmp_path / "oven.sqlite3", tmp_path / "copy.sqlite3"
    old = same_site(tmp_path, key, f"sqlite:///{file}")
    migrate(old)
    python(old, WRITE)
    before = python(old, TELL)
    stop = Event()
    writer = Thread(target=keep_writing, args=(file, stop))
    writer.start()
    try:
        (line,) = lines_with("sqlite3.connect('oven.sqlite3')")
        assert line.startswith("python3 -c ")
        subprocess.run([sys.executable, *shlex.split(line)[1:]], cwd=tmp_path, check=True)
    finally:
        stop.set()
        writer.join()
    new = same_site(tmp_path, key, f"sqlite:///{copy}")
    assert python(new, TELL) == before
    assert python(new, OPEN, before.split()[-1]) == "ready 200\n"
    assert sqlite3.connect(copy).execute("PRAGMA integrity_check").fetchone() == ("ok",)


def keep_writing(file, stop):
    """Other rows, while the copy is made."""
    connection = sqlite3.connect(file, timeout=10)
    number = 0
    while not stop.is_set():
        number += 1
        connection.execute(
            "INSERT INTO triage_signintry (account, address, at) VALUES (?, '', '2026-11-01')", (f"{number}",)
        )
        connection.commit()
    connection.close()
