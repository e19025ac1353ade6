"""The demo site is the oven fault check and nothing else."""

from django.urls import include, path

urlpatterns = [
    path("", include("triage.urls")),
]
