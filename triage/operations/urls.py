"""Addresses for whoever runs the site."""

from django.urls import path

from triage.operations import views

urlpatterns = [
    path("health/", views.health, name="operations-health"),
    path("ready/", views.ready, name="operations-ready"),
    path("metrics/", views.metrics, name="operations-metrics"),
]
