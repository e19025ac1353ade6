"""A visit to any address, read as the views read it."""

import pytest

from triage.check_pages.visit import open_visit


@pytest.fixture
def visit(rf):
    return lambda address: open_visit(rf.get(address))
