"""Addresses of what the installed app fetches."""

from django.urls import path

from triage.offline.views.pack_bundle import pack_bundle
from triage.offline.views.page_bundle import page_bundle

urlpatterns = [
    path("pack-<slug:version>.json", pack_bundle, name="offline-pack"),
    path("pages-<slug:version>.json", page_bundle, name="offline-page-bundle"),
]
