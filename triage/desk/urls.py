"""Addresses of the firm's desk."""

from django.urls import path, register_converter

from triage.desk.views.account import account, second_factor
from triage.desk.views.api_keys import api_keys, revoke_api_key
from triage.desk.views.deliveries import deliveries, retry_delivery, send_test_delivery
from triage.desk.views.exports import exports, open_repair_table, outcomes_yaml, sheets_table
from triage.desk.views.invitation import invitation
from triage.desk.views.job_sheet import add_note_to_sheet, change_status, erase_sheet, inbox, job_sheet
from triage.desk.views.outcome import outcome
from triage.desk.views.reports import calibration, knowledge, knowledge_tree
from triage.desk.views.settings import new_webhook_secret, settings
from triage.desk.views.sheet_files import calendar_file, code_picture, form_file, json_file, photo, text_file
from triage.desk.views.sign_in import choose_firm, sign_in, sign_out, verify_two_factor
from triage.desk.views.staff import staff, staff_action, withdraw_invitation


class StaffActionConverter:
    """What can be done to a member."""

    regex = "role|remove|reset"

    def to_python(self, value: str) -> str:
        return value

    def to_url(self, value: str) -> str:
        return value


register_converter(StaffActionConverter, "staff_action")

urlpatterns = [
    path("", inbox, name="desk-inbox"),
    path("sign-in/", sign_in, name="desk-sign-in"),
    path("sign-out/", sign_out, name="desk-sign-out"),
    path("second-step/", verify_two_factor, name="desk-verify"),
    path("firms/", choose_firm, name="desk-firms"),
    path("invitation/<str:token>/", invitation, name="desk-invitation"),
    path("account/", account, name="desk-account"),
    path("account/second-factor/", second_factor, name="desk-second-factor"),
    path("sheets/<str:reference>/", job_sheet, name="desk-sheet"),
    path("sheets/<str:reference>/status/", change_status, name="desk-status"),
    path("sheets/<str:reference>/note/", add_note_to_sheet, name="desk-note"),
    path("sheets/<str:reference>/outcome/", outcome, name="desk-outcome"),
    path("sheets/<str:reference>/erase/", erase_sheet, name="desk-erase"),
    path("sheets/<str:reference>/text/", text_file, name="desk-text"),
    path("sheets/<str:reference>/json/", json_file, name="desk-json"),
    path("sheets/<str:reference>/calendar/", calendar_file, name="desk-calendar"),
    path("sheets/<str:reference>/code/", code_picture, name="desk-code"),
    path("sheets/<str:reference>/repair-form/", form_file, name="desk-repair-form"),
    path("sheets/<str:reference>/photo/", photo, name="desk-photo"),
    path("calibration/", calibration, name="desk-calibration"),
    path("exports/", exports, name="desk-exports"),
    path("exports/job-sheets.csv", sheets_table, name="desk-sheets-csv"),
    path("exports/open-repair.csv", open_repair_table, name="desk-open-repair"),
    path("exports/outcomes.yaml", outcomes_yaml, name="desk-outcomes-yaml"),
    path("deliveries/", deliveries, name="desk-deliveries"),
    path("deliveries/test/", send_test_delivery, name="desk-delivery-test"),
    path("deliveries/<int:number>/again/", retry_delivery, name="desk-delivery-retry"),
    path("settings/", settings, name="desk-settings"),
    path("settings/webhook-secret/", new_webhook_secret, name="desk-webhook-secret"),
    path("settings/keys/", api_keys, name="desk-keys"),
    path("settings/keys/<int:number>/revoke/", revoke_api_key, name="desk-key-revoke"),
    path("staff/", staff, name="desk-staff"),
    path("staff/<int:number>/<staff_action:action>/", staff_action, name="desk-staff-action"),
    path("staff/invitations/<int:number>/withdraw/", withdraw_invitation, name="desk-withdraw"),
    path("knowledge/", knowledge, name="desk-knowledge"),
    path("knowledge/tree.svg", knowledge_tree, name="desk-knowledge-tree"),
]
