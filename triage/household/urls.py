"""Addresses of the householder's pages."""

from django.urls import path

from triage.household.views.costs import costs
from triage.household.views.danger import danger
from triage.household.views.erase import erase
from triage.household.views.hand_over import hand_over
from triage.household.views.hand_over_blank import hand_over_blank
from triage.household.views.hand_over_kept import hand_over_kept
from triage.household.views.leave import leave
from triage.household.views.reading import reading
from triage.household.views.sheet import sheet
from triage.household.views.start import start
from triage.household.views.step import step
from triage.household.views.summary import summary
from triage.household.views.task import task

urlpatterns = [
    path("", start, name="household-start"),
    path("danger/", danger, name="household-danger"),
    path("check/", step, name="household-step"),
    path("check/task/<slug:task>/", task, name="household-task"),
    path("reading/<slug:kind>/", reading, name="household-reading"),
    path("check/summary/", summary, name="household-summary"),
    path("check/costs/", costs, name="household-costs"),
    path("check/hand-over/", hand_over, name="household-hand-over"),
    path("check/hand-over/kept/", hand_over_kept, name="household-hand-over-kept"),
    path("check/hand-over/blank/", hand_over_blank, name="household-hand-over-blank"),
    path("sheet/<str:reference>/", sheet, name="household-sheet"),
    path("sheet/<str:reference>/erase/", erase, name="household-sheet-erase"),
    path("not-this/<slug:reason>/", leave, name="household-exit"),
]
