"""Addresses that have to stand at the root: a worker guards only what lies beside or below it."""

from django.urls import path

from triage.offline.views.manifest import manifest
from triage.offline.views.service_worker import service_worker

urlpatterns = [
    path("worker.js", service_worker, name="offline-worker"),
    path("manifest.webmanifest", manifest, name="offline-manifest"),
]
