"""The views as an agent's browser asks for them."""

import pytest

from tests.desk.clients import client_of
from tests.firm_builders import make_firm, make_member
from triage.models.firm import Role


@pytest.fixture
def agent(db):
    return make_member(make_firm(name="Hearth Repairs"), Role.AGENT)


@pytest.fixture
def client(agent):
    return client_of(agent)
