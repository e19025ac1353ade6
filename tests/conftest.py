"""What every test may use: Debian's Chromium, driven by Playwright, as a phone by default.

A machine without the browser stops the whole run with the remedy; no browser test is ever passed over.
"""

import os
import shutil

import pytest

from triage.check_pages import keeping

# Playwright keeps an event loop in the test's thread, which Django takes for a view that blocks one.
os.environ.setdefault("DJANGO_ALLOW_ASYNC_UNSAFE", "true")

# Without these the browser tries to reach its maker's servers at every start.
STAY_LOCAL = (
    "--disable-quic",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


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
