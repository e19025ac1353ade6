"""Addresses a firm's page uses; they stay as they are, because they stand in other people's pages."""

from django.urls import path

from triage.embed.views.accent import accent
from triage.embed.views.frame import frame
from triage.embed.views.loader import loader

urlpatterns = [
    path("<slug:firm>/", frame, name="embed-frame"),
    path("<slug:firm>/loader.js", loader, name="embed-loader"),
    path("<slug:firm>/accent.css", accent, name="embed-accent"),
]
