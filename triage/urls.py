"""Joins the addresses of every audience; nothing else does."""

from django.urls import include, path
from django.views.decorators.http import require_safe
from django.views.generic import RedirectView

urlpatterns = [
    path("", include("triage.household.urls")),
    path("", include("triage.offline.root_urls")),
    path("api/", include("triage.api.urls")),
    # Where the call page was before it had a door.
    path("call/", require_safe(RedirectView.as_view(pattern_name="desk-call", query_string=True)), name="call"),
    path("desk/call/", include("triage.desk.call.urls")),
    path("desk/", include("triage.desk.urls")),
    path("embed/", include("triage.embed.urls")),
    path("", include("triage.operations.urls")),
    path("offline/", include("triage.offline.urls")),
]
