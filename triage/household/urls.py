"""Addresses of the householder's pages."""

from django.urls import path

from triage.household.views.danger import danger
from triage.household.views.leave import leave
from triage.household.views.start import start
from triage.household.views.step import step
from triage.household.views.summary import summary
from triage.household.views.task import task

urlpatterns = [
    path("", start, name="household-start"),
    path("danger/", danger, name="household-danger"),
    path("check/", step, name="household-step"),
    path("check/task/<slug:task>/", task, name="household-task"),
    path("check/summary/", summary, name="household-summary"),
    path("not-this/<slug:reason>/", leave, name="household-exit"),
]
