"""Walls between firms, by the ids a form or an address may name (IDOR); who opens what page is in tests/desk."""

import pytest
from django.urls import reverse

from tests.api.asking import address, bearer, firm_with_key, send
from tests.attack.whole_site import ROUTES, World
from tests.desk.clients import client_of
from tests.desk.permissions import GET_ACCESS, token_of
from tests.firm_builders import make_firm, make_job_sheet, make_member
from triage.models import ApiKey, AuditEntry, Invitation, JobSheet, Member
from triage.models.audit_entry import AuditAction
from triage.models.firm import Role

pytestmark = pytest.mark.django_db


def test_a_stranger_changes_nothing_of_another_firm_by_any_id():
    world = World()
    stranger = world.clients["stranger"]
    reference = world.sheet.reference
    before = _everything(world)
    for name, item in {
        "desk-status": {"status": "done"},
        "desk-note": {"text": "I was here."},
        "desk-outcome": {"found": "fan-element-open", "result": "first-visit"},
        "desk-erase": {"sure": "yes"},
        "desk-delivery-retry": {},
        "desk-staff-action": {"role": "owner"},
        "desk-withdraw": {},
        "desk-key-revoke": {},
    }.items():
        assert stranger.post(world.address(name), item).status_code == 404, name
    for deed in ("role", "remove", "reset"):
        there = reverse("desk-staff-action", args=[world.things["desk-staff-action"], deed])
        assert stranger.post(there, {"role": "agent"}).status_code == 404, deed
    assert _everything(world) == before
    assert not AuditEntry.objects.filter(sheet__reference=reference, member__firm__slug="stranger").exists()


def _everything(world):
    sheet = JobSheet.objects.values().get(pk=world.sheet.pk)
    members = list(Member.objects.filter(firm=world.firm).order_by("pk").values())
    lines = AuditEntry.objects.filter(sheet=world.sheet).count()
    ways_in = list(Invitation.objects.values()), list(ApiKey.objects.values())
    return sheet, members, ways_in, lines, world.sheet.notes.count()


def test_whatever_shows_something_of_a_job_sheet_leaves_a_line_with_who_looked():
    """Every address that names one, opened and sent what it refuses; the inbox is a list and opens none."""
    world = World()
    owner = world.clients["owner"]
    lines = AuditEntry.objects.filter(sheet=world.sheet, member__role=Role.OWNER)
    naming = [name for name in GET_ACCESS if name.startswith("desk-") and "reference" in ROUTES[name]]
    assert len(naming) > 9
    for name in naming:
        before = lines.count()
        answer = owner.get(world.address(name))
        assert lines.count() == before + 1, (name, answer.status_code)
    for name, item in {"desk-note": {"text": ""}, "desk-outcome": {}, "desk-erase": {}}.items():
        before = lines.filter(action=AuditAction.OPENED).count()
        assert owner.post(world.address(name), item).status_code == 400
        assert lines.filter(action=AuditAction.OPENED).count() == before + 1, name
    before = lines.count()
    owner.get(world.address("desk-inbox"))
    assert lines.count() == before


def test_a_firm_cannot_be_entered_by_naming_anothers_place():
    world = World()
    place = Member.objects.filter(firm=world.firm, role=Role.OWNER).first()
    world.firm.name = "Quillfeather"
    world.firm.save()
    stranger = world.clients["stranger"]
    assert "Quillfeather" in world.clients["owner"].get("/desk/").content.decode()
    assert stranger.post("/desk/firms/", {"member": str(place.pk)}).status_code == 404
    assert "Quillfeather" not in stranger.get("/desk/").content.decode()


def test_a_list_and_a_search_find_the_own_firms_sheets_alone():
    own, other = make_firm(), make_firm()
    mine, theirs = make_job_sheet(own), make_job_sheet(other)
    client = client_of(make_member(own, Role.OWNER))
    for query in (
        "",
        "?words=Alex",
        f"?words={theirs.reference}",
        "?words=%25",
        "?words='%20OR%20'1'='1",
        f"?firm={other.pk}",
    ):
        page = client.get(f"/desk/{query}").content.decode()
        assert f"/desk/sheets/{theirs.reference}/" not in page, query
    assert f"/desk/sheets/{mine.reference}/" in client.get("/desk/").content.decode()
    assert theirs.reference not in client.get(reverse("desk-sheets-csv")).content.decode()


def test_a_key_opens_its_own_firm_alone(client):
    own, key = firm_with_key()
    other, _other_key = firm_with_key()
    sheet = make_job_sheet(other)
    assert client.get(address(other, sheet.reference), headers=bearer(key)).status_code == 404
    assert client.get(address(own, sheet.reference), headers=bearer(key)).status_code == 404
    assert send(client, other, **bearer(key)).status_code == 404
    assert JobSheet.objects.count() == 1


def test_one_senders_token_opens_no_other_sheet(client):
    one, other = make_job_sheet(), make_job_sheet()
    assert client.get(f"/sheet/{one.reference}/?token={token_of(one)}").status_code == 200
    assert client.get(f"/sheet/{other.reference}/?token={token_of(one)}").status_code == 404
    assert client.post(f"/sheet/{other.reference}/erase/?token={token_of(one)}").status_code == 404
    other.refresh_from_db()
    assert other.erased is None


def test_an_idempotency_key_of_one_firm_gives_nothing_of_another(client):
    own, key = firm_with_key()
    other, other_key = firm_with_key()
    first = send(client, own, **bearer(key)).json()
    second = send(client, other, **bearer(other_key)).json()
    assert first["reference"] != second["reference"]
    assert JobSheet.objects.count() == 2
