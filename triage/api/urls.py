"""Addresses of the API. They stay as they are: other people's programs hold them."""

from django.urls import path, re_path

from triage.api.views import job_sheets, public

urlpatterns = [
    path("v1/openapi.json", public.openapi, name="api-description"),
    path("v1/job-sheet.schema.json", public.job_sheet_schema, name="api-job-sheet-schema"),
    path("v1/pack", public.pack, name="api-pack"),
    path("v1/step", public.step, name="api-step"),
    path("v1/firms/<slug:firm>/job-sheets", job_sheets.job_sheets, name="api-job-sheets"),
    path("v1/firms/<slug:firm>/job-sheets/<str:reference>", job_sheets.job_sheet, name="api-job-sheet"),
    re_path("", public.not_found, name="api-nowhere"),
]
