"""The API does what its description says: told by two programs that are not ours.

openapi-spec-validator reads the description against the OpenAPI 3.1 schema; schemathesis makes requests from it, right
ones and wrong ones, and compares every answer with it. The runs are bounded and the same each time.
"""

import pytest
import schemathesis
from django.core.signals import request_finished, request_started
from django.db import close_old_connections
from django.urls import get_resolver
from hypothesis import HealthCheck, settings
from openapi_spec_validator import OpenAPIV31SpecValidator
from schemathesis.config import SchemathesisConfig

from site_config.wsgi import application
from tests.api.asking import bearer, firm_with_key, send
from tests.firm_builders import make_job_sheet
from triage.api import callers
from triage.api.views.public import openapi_document
from triage.models import JobSheet
from triage.web.rate_limit import Policy

CONFIG = """
seed = 7

[generation]
mode = "all"
max-examples = 12
deterministic = true

[parameters]
"path.firm" = "hearth"
"path.reference" = "KD7MX-4QPTR"

[phases.coverage]
enabled = true

# A body of the right shape may still hold no answer we know, or an address that is none: answered with 422.
[checks.positive_data_acceptance]
expected-statuses = ["2xx", "401", "403", "404", "422"]
"""
ENDLESS = Policy("endless", quota=10**9, seconds=60)


API = schemathesis.openapi.from_wsgi("/api/v1/openapi.json", application, config=SchemathesisConfig.from_str(CONFIG))
PLAIN = {"Accept-Encoding": "identity"}
BOUNDED = settings(suppress_health_check=list(HealthCheck), deadline=None)


@pytest.fixture
def one_connection(db):
    """Requests through WSGI end with a tidy-up that closes a connection in a transaction, which is the test's own.
    Django's test client does without it in the same way."""
    for signal in (request_started, request_finished):
        signal.disconnect(close_old_connections)
    yield
    for signal in (request_started, request_finished):
        signal.connect(close_old_connections)


@pytest.fixture
def secret(one_connection, monkeypatch):
    """A key that works, of a firm with one job sheet."""
    monkeypatch.setattr(callers, "PER_KEY", ENDLESS)
    monkeypatch.setattr(callers, "PER_ADDRESS", ENDLESS)
    firm, shown = firm_with_key(slug="hearth")
    make_job_sheet(firm)
    JobSheet.objects.update(reference="KD7MX-4QPTR")
    return shown


def test_the_description_is_openapi_3_1():
    OpenAPIV31SpecValidator(openapi_document()).validate()


def test_every_address_is_described_and_nothing_else():
    routes = {
        "/" + str(outer.pattern) + str(inner.pattern)
        for outer in get_resolver().url_patterns[0].url_patterns
        if str(outer.pattern) == "api/"
        for inner in outer.url_patterns
        if inner.name != "api-nowhere"
    }
    written = {route.replace("<slug:firm>", "{firm}").replace("<str:reference>", "{reference}") for route in routes}
    assert written == set(openapi_document()["paths"])
    assert len(written) == 6


@API.parametrize()
@BOUNDED
def test_every_answer_is_as_described(case, secret):
    case.call_and_validate(headers=PLAIN)


@API.parametrize()
@BOUNDED
def test_every_answer_to_a_key_is_as_described(case, secret):
    case.call_and_validate(headers={**PLAIN, "Authorization": f"Bearer {secret}"})


@pytest.mark.django_db
def test_the_example_of_the_description_makes_a_job_sheet(client):
    firm, secret = firm_with_key()
    made = openapi_document()["paths"]["/api/v1/firms/{firm}/job-sheets"]["post"]
    example = made["requestBody"]["content"]["application/json"]["examples"]["no heat"]["value"]
    assert send(client, firm, example, **bearer(secret)).status_code == 201
