"""Addresses of the API. They stay as they are: other people's programs hold them."""

from django.urls import path, re_path

from triage.api.views.description import description
from triage.api.views.job_sheet import job_sheet
from triage.api.views.job_sheet_schema import job_sheet_schema
from triage.api.views.job_sheets import job_sheets
from triage.api.views.nowhere import nowhere
from triage.api.views.pack import pack
from triage.api.views.step import step

urlpatterns = [
    path("v1/openapi.json", description, name="api-description"),
    path("v1/job-sheet.schema.json", job_sheet_schema, name="api-job-sheet-schema"),
    path("v1/pack", pack, name="api-pack"),
    path("v1/step", step, name="api-step"),
    path("v1/firms/<slug:firm>/job-sheets", job_sheets, name="api-job-sheets"),
    path("v1/firms/<slug:firm>/job-sheets/<str:reference>", job_sheet, name="api-job-sheet"),
    re_path("", nowhere, name="api-nowhere"),
]
