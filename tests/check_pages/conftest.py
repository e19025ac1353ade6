"""A visit to any address, read as the views read it."""

import pytest

from triage.check_pages.request import read_check_request


@pytest.fixture
def check_request(rf):
    return lambda address: read_check_request(rf.get(address))
