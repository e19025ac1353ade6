"""Joins the addresses of every audience; nothing else does."""

from django.urls import include, path

urlpatterns = [
    path("", include("triage.household.urls")),
]
