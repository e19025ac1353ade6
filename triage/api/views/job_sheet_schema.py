"""The JSON Schema of a job sheet, at the address it keeps."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase

from triage.api.endpoint import open_read
from triage.api.showing import show_document
from triage.jobsheet.formats.json import schema


@open_read
def job_sheet_schema(request: HttpRequest) -> HttpResponseBase:
    return show_document(request, schema(), "application/schema+json")
