"""The demo site is the oven fault check and nothing else."""

from django.urls import include, path

urlpatterns = [
    path("", include("triage.urls")),
]

handler404 = "triage.household.views.mishap.not_found"
handler500 = "triage.household.views.mishap.server_error"
