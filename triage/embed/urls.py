"""Addresses a firm's page uses; they stay as they are, because they stand in other people's pages."""

from django.urls import path

from triage.embed import views

urlpatterns = [
    path("<slug:firm>/", views.frame, name="embed-frame"),
    path("<slug:firm>/loader.js", views.loader, name="embed-loader"),
    path("<slug:firm>/accent.css", views.accent, name="embed-accent"),
]
