"""Addresses for whoever runs the site."""

from django.urls import path

from triage.operations.views.health import health
from triage.operations.views.metrics import metrics
from triage.operations.views.ready import ready

urlpatterns = [
    path("health/", health, name="operations-health"),
    path("ready/", ready, name="operations-ready"),
    path("metrics/", metrics, name="operations-metrics"),
]
