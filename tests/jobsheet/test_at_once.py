"""Once means once: the same request twice, many workers, and a worker that is killed, on both kinds of database."""

import json
import os
import subprocess
import sys

import pytest
from django.conf import settings

from tests.jobsheet.on_a_file import AT_ONCE, MESSAGES, deliver_at_once, hand_over_at_once
from tests.whole_site.project_files import ROOT

ON_SERVER = settings.DATABASES["default"]["ENGINE"].endswith("postgresql")
# A database in memory cannot be shared by threads; there the file alone is raced.
SERVER = pytest.param("the server", marks=pytest.mark.django_db(transaction=True))
DATABASES = ["a file", SERVER] if ON_SERVER else ["a file"]


@pytest.fixture(scope="module")
def on_a_file(tmp_path_factory):
    path = tmp_path_factory.mktemp("database") / "sheets.sqlite3"
    run = subprocess.run(
        [sys.executable, "-m", "tests.jobsheet.on_a_file"],
        cwd=ROOT,
        env={
            **os.environ,
            "DJANGO_SETTINGS_MODULE": "tests.settings",
            "DATABASE_URL": f"sqlite:///{path}",
            "TRIAGE_WEBHOOK_NETWORKS": "any",
        },
        capture_output=True,
        text=True,
    )
    assert run.returncode == 0, run.stderr
    return json.loads(run.stdout)


@pytest.fixture
def races(request):
    """What came of the races, by their names, on the database a test asks for."""
    here = {"hand_over": hand_over_at_once, "deliver": deliver_at_once}

    def run(database, race):
        return here[race]() if database == "the server" else request.getfixturevalue("on_a_file")[race]

    return run


@pytest.mark.parametrize("database", DATABASES)
def test_one_request_sent_many_times_at_once_makes_one_sheet(races, database):
    found = races(database, "hand_over")
    assert found == {"answers": AT_ONCE, "references": 1, "sheets": 1, "deliveries": 2}


@pytest.mark.parametrize("database", DATABASES)
def test_many_workers_send_each_message_once(races, database):
    found = races(database, "deliver")
    assert found == {"attempts": MESSAGES, "sent": MESSAGES, "different": MESSAGES, "states": {"sent": MESSAGES}}


def test_a_worker_killed_in_the_middle_loses_nothing_and_doubles_nothing(on_a_file):
    kill = on_a_file["kill"]
    assert kill["left"] == {"state": "waiting", "leased": True}
    assert kill["too_early"] == 0
    assert len(kill["ids"]) == 2
    assert len(set(kill["ids"])) == kill["kept"] == 1
    assert kill["state"] == "sent"
