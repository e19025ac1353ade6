"""What anybody may read from anywhere: the steps of a check, what can be asked, and what describes the API."""

import json
from functools import cache
from pathlib import Path
from typing import Any

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.utils.translation import gettext as _
from django.views.decorators.csrf import csrf_exempt

from triage.api.endpoint import public_get
from triage.api.presenters.pack import pack_json
from triage.api.presenters.step import step_json
from triage.api.responses import document_response, public_response
from triage.check_pages.request import read_check_request
from triage.jobsheet.formats.json import schema
from triage.web.json_errors import ApiError, ErrorKind, problem_response
from triage.web.step_header import STEP

OK = 200
# The kinds of step, as the pages' own answers are counted.
COUNTED = {
    "danger-signs": "danger",
    "question": "question",
    "emergency": "emergency",
    "result": "result",
    "out-of-scope": "out_of_scope",
}
DESCRIPTION = Path(__file__).parent.with_name("openapi.json")


@public_get
def step(request: HttpRequest) -> HttpResponseBase:
    """The next step of a check, from the same address a page has: `?region=...&complaint=no-heat&danger=none&...`."""
    check_request = read_check_request(request)
    payload = step_json(check_request)
    response = public_response(request, payload, check_request)
    if response.status_code == OK:
        response.headers[STEP] = COUNTED[str(payload["kind"])]
    return response


@public_get
def pack(request: HttpRequest) -> HttpResponseBase:
    """What can be asked and answered, for a telephone menu."""
    check_request = read_check_request(request)
    return public_response(request, pack_json(check_request), check_request)


@public_get
def job_sheet_schema(request: HttpRequest) -> HttpResponseBase:
    """The JSON Schema of a job sheet, at the address it keeps."""
    return document_response(request, schema(), "application/schema+json")


@public_get
def openapi(request: HttpRequest) -> HttpResponseBase:
    """The API, described for programs."""
    return document_response(request, openapi_document())


@cache
def openapi_document() -> dict[str, Any]:
    """`openapi.json` with the published schema of the job sheet put in.

    OpenAPI 3.1 speaks JSON Schema, but has one place for named schemas; so the job sheet's own go there too.
    """
    document: dict[str, Any] = json.loads(DESCRIPTION.read_text("utf-8"))
    sheet = json.loads(json.dumps(schema()).replace("#/$defs/", "#/components/schemas/sheet_"))
    for address in ("$schema", "$id"):
        del sheet[address]
    parts = {f"sheet_{name}": part for name, part in sheet.pop("$defs").items()}
    document["components"]["schemas"] |= {"sheet": sheet, **parts}
    return document


@csrf_exempt
def not_found(_request: HttpRequest) -> HttpResponseBase:
    """For every address that does not exist: the API's own shape and not a page."""
    detail = _("There is no such address. All addresses are in /api/v1/openapi.json.")
    return problem_response(ApiError(ErrorKind.NOT_FOUND, detail))
