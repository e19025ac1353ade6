"""An operator who types what the guide says, in its order, has a running site: nothing of it needs a setting that is
not there yet."""

import json
import os
import re
import subprocess
import sys
import time
from urllib.error import URLError
from urllib.request import Request, urlopen

import pytest

from tests.operations.guided_host import made_host
from tests.operations.server_guide import (
    GUIDE,
    command_of,
    manage_commands,
    programs_of_tests,
    shell_commands,
    values,
)
from tests.running_demo import free_port
from tests.whole_site.project_files import ROOT

QUICK = {"compute_reports": ("--firm", "hearth")}  # the page about the pack takes a minute, and has tests of its own
START_SECONDS = 60
SHEET_OF_THE_GUIDE = """
import django; django.setup()
from tests.firm_builders import make_job_sheet
from triage.models import Firm, JobSheet
sheet = make_job_sheet(Firm.objects.get(slug="hearth"))
JobSheet.objects.filter(pk=sheet.pk).update(reference="KD7MX-4QPTR")
"""


@pytest.fixture(scope="module")
def host(tmp_path_factory):
    made = made_host(tmp_path_factory.mktemp("server"))
    for command in dict.fromkeys(manage_commands()):
        if "export_personal_data" in command:
            tools = {"PYTHONPATH": str(ROOT), "DJANGO_SETTINGS_MODULE": "site_config.settings"}
            made.run(*made.as_a_unit([sys.executable, "-c", SHEET_OF_THE_GUIDE]), **tools)
        made.says[command.partition(" #")[0].strip()] = made.run_line(command)
    return made


def test_each_command_does_what_it_is_there_for(host):
    says = host.says
    assert "static files copied" in says["oven-manage collectstatic --noinput"]
    assert "Applying triage.0001_firm... OK" in says["oven-manage migrate"]
    assert "no issues" in says["oven-manage check --deploy"]
    assert says['oven-manage firm add hearth "Hearth Repairs"'].startswith("Firm hearth is made.")
    assert re.search(r"/desk/invitation/\S{40,}/", says['oven-manage firm invite-owner hearth "Sam Carter"'])
    assert says["oven-manage erase_expired"] == "0 job sheets erased.\n"
    assert "KD7MX-4QPTR" in json.dumps(json.loads(says["oven-manage export_personal_data KD7MX-4QPTR"]))


def test_the_settings_stand_before_whatever_needs_them(host):
    assert GUIDE.index("SECRET_KEY=...") < GUIDE.index("cat > /usr/local/sbin/oven-manage")
    assert [command for command in shell_commands() if "manage.py" in command] == []
    alone = subprocess.run(
        [sys.executable, "manage.py", "migrate"], cwd=host.code, env=host.shell, capture_output=True, text=True
    )
    assert alone.returncode != 0
    assert "SECRET_KEY is not set" in alone.stderr


@pytest.mark.parametrize("deed", ["erase_expired", "clearsessions", "compute_reports"])
def test_what_is_run_every_day_can_be_run(host, deed):
    (line,) = [line for line in values("oven-daily.service", "ExecStart") if line.endswith(f"manage.py {deed}")]
    host.run(*host.as_a_unit([*command_of(host.here(line)), *QUICK.get(deed, ())]))


def test_the_unit_of_the_web_serves_and_is_ready(host):
    port = free_port()
    (line,) = values("oven-web@.service", "ExecStart")
    command = host.as_a_unit(command_of(host.here(line), port))
    with subprocess.Popen(command, cwd=host.code, env={"PATH": os.environ["PATH"]}) as process:
        try:
            assert answer(port, "/ready/", process) == (200, "This site is ready.\n")
            status, page = answer(port, "/?region=gb-eng", process)
            assert status == 200
            sheet = re.search(r'href="(/static/triage/css/oven\.[0-9a-f]{12}\.css)"', page)[1]
            assert answer(port, sheet, process)[0] == 200
        finally:
            process.terminate()


def answer(port, path, process):
    """What comes back through a proxy that ends TLS, once the server listens."""
    headers = {"Host": "127.0.0.1" if path == "/ready/" else "check.example.org", "X-Forwarded-Proto": "https"}
    last = time.monotonic() + START_SECONDS
    while True:
        try:
            with urlopen(Request(f"http://127.0.0.1:{port}{path}", headers=headers), timeout=20) as response:
                return response.status, response.read().decode()
        except URLError:
            assert process.poll() is None
            assert time.monotonic() < last
            time.sleep(0.1)


def test_only_locked_packages_with_a_hash_are_installed():
    installs = [command for command in shell_commands() if "pip install" in command]
    assert len(installs) == 2
    assert {command.partition(" install ")[2] for command in installs} == {"--require-hashes -r .locks/postgres.txt"}
    assert (ROOT / ".locks" / "postgres.txt").exists()


def test_every_program_of_the_tests_that_the_guide_names_is_there():
    found = programs_of_tests()
    assert {"tests.attack.fuzzing", "tests.bench", "tests.releases"} <= set(found)
    assert all(found.values()), found
