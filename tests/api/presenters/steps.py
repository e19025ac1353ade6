"""Steps as the API tells them, each asked for by its address and held against the description."""

from functools import cache
from urllib.parse import urlencode

from django.test import RequestFactory
from jsonschema import Draft202012Validator

from triage.api.views.public import openapi_document
from triage.check_pages.request import read_check_request


@cache
def validator(name):
    return Draft202012Validator(
        {"$ref": f"#/components/schemas/{name}", "components": openapi_document()["components"]}
    )


def check_request(answers=(), region="gb-eng"):
    return read_check_request(
        RequestFactory().get(f"/api/v1/step?{urlencode([('region', region), *dict(answers).items()])}")
    )
