"""Joins the addresses of every audience; nothing else does."""

from django.urls import include, path

urlpatterns = [
    path("", include("triage.household.urls")),
    path("", include("triage.offline.root_urls")),
    path("api/", include("triage.api.urls")),
    path("call/", include("triage.desk.call.urls")),
    path("desk/", include("triage.desk.urls")),
    path("embed/", include("triage.embed.urls")),
    path("", include("triage.operations.urls")),
    path("offline/", include("triage.offline.urls")),
]
