"""What every test may use: Debian's Chromium, driven by Playwright, as a phone by default.

A machine without the browser stops the whole run with the remedy; no browser test is ever passed over.
"""

import os
import shutil

import pytest
from django.db import connection

from tests.proofs.registry import PROOFS
from tests.whole_site.project_files import ROOT
from triage.check_pages import keeping

PROOF_FILES = {ROOT / test for proof in PROOFS for test in proof.tests}

# Playwright keeps an event loop in the test's thread, which Django takes for a view that blocks one.
os.environ.setdefault("DJANGO_ALLOW_ASYNC_UNSAFE", "true")

# Without these the browser tries to reach its maker's servers at every start.
STAY_LOCAL = (
    "--disable-quic",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


def pytest_addoption(parser):
    parser.addoption("--without-proofs", action="store_true", help="leave out what `python -m tests.proofs` runs")
    parser.addoption("--without-browser", action="store_true", help="leave out every test that opens a browser")


def pytest_ignore_collect(collection_path, config):
    """A proof's whole file is passed over, so that it is not even read."""
    return True if config.getoption("--without-proofs") and collection_path in PROOF_FILES else None


def pytest_collection_modifyitems(config, items):
    if config.getoption("--without-browser"):
        opening = [item for item in items if "playwright" in item.fixturenames]
        config.hook.pytest_deselected(items=opening)
        items[:] = [item for item in items if "playwright" not in item.fixturenames]


@pytest.fixture(scope="session")
def django_db_setup(django_db_setup, django_db_blocker):
    """A thread of the live server may outlast its browser by a moment, and a database in use cannot be dropped."""
    yield
    if connection.vendor == "postgresql":
        with django_db_blocker.unblock(), connection.cursor() as server:
            server.execute(
                "SELECT pg_terminate_backend(pid) FROM pg_stat_activity"
                " WHERE datname = current_database() AND pid <> pg_backend_pid()"
            )


@pytest.fixture(scope="session")
def live_server(django_db_setup, live_server):
    """Begun after the database is there, so that it ends before the database goes."""
    return live_server


@pytest.fixture(autouse=True)
def no_page_of_another_test():
    """Pages are kept as long as the program runs; what one test changed must not be seen by the next."""
    keeping.SHELF.clear()


@pytest.fixture(scope="session")
def chromium_path():
    path = shutil.which("chromium") or shutil.which("chromium-browser")
    if path is None:
        pytest.exit("Browser tests need Chromium: as root, run `apt-get install chromium`.", returncode=4)
    return path


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args, chromium_path):
    return {**browser_type_launch_args, "executable_path": chromium_path, "args": list(STAY_LOCAL)}


@pytest.fixture(scope="session")
def browser_context_args(browser_context_args, playwright):
    """Every page opens on a phone; a test for another screen sets its own viewport."""
    return {**browser_context_args, **playwright.devices["Pixel 7"]}
