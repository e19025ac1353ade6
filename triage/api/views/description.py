"""The API, described for programs."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase

from triage.api.endpoint import open_read
from triage.api.openapi import document
from triage.api.showing import show_document


@open_read
def description(request: HttpRequest) -> HttpResponseBase:
    return show_document(request, document())
