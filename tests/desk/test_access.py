"""Walls between firms and roles: the whole cast at every address of the site, so that a new one needs a row."""

import re
from io import BytesIO

import pytest
from django.test import Client
from django.urls import URLPattern, get_resolver, reverse
from django.utils import timezone
from PIL import Image

from tests.desk.clients import client_of, make_account
from tests.desk.permissions import ACTORS, ALIKE_FOR_ALL, GET_ACCESS, POST_ACCESS, token_of
from tests.firm_builders import make_booking, make_delivery, make_firm, make_job_sheet, make_member
from triage.desk import staff
from triage.desk.knowledge_report import save_report
from triage.models import Invitation
from triage.models.firm import Role
from triage.models.report import ReportTopic
from triage.web.api_keys import make_key

pytestmark = pytest.mark.django_db


def patterns(found, before=""):
    for entry in found:
        route = before + str(entry.pattern)
        if isinstance(entry, URLPattern):
            yield entry.name, route
        else:
            yield from patterns(entry.url_patterns, route)


ROUTES = dict(patterns(get_resolver().url_patterns))


def picture():
    out = BytesIO()
    Image.new("RGB", (40, 30), "grey").save(out, "JPEG")
    return out.getvalue()


class World:
    """A firm in the Union with everything an address may point at, and the cast with their browsers."""

    def __init__(self):
        self.firm = make_firm(region="ie", wants_repair_form=True)
        self.sheet = make_job_sheet(self.firm, region="ie", booking=make_booking(photo=picture()))
        self.token = staff.invite(firm=self.firm, name="Kim", role=Role.AGENT)
        members = {role.value: make_member(self.firm, role) for role in Role}
        members["stranger"] = make_member(make_firm(), Role.OWNER)
        self.clients = {name: client_of(members[name]) if name in members else Client() for name in ACTORS}
        self.things = {
            "desk-delivery-retry": make_delivery(self.firm, state="dead").pk,
            "desk-staff-action": make_member(self.firm, Role.REPAIRER).pk,
            "desk-key-revoke": make_key(firm=self.firm, name="Telephone menu")[0].pk,
            "desk-withdraw": Invitation.objects.get(firm=self.firm).pk,
        }

    def address(self, name):
        if name == "desk-staff-action":
            return reverse(name, args=[self.things[name], "role"])
        if name in self.things:
            return reverse(name, args=[self.things[name]])
        if name == "desk-invitation":
            return reverse(name, args=[self.token])
        named = {"reference": self.sheet.reference, "slug": "gas", "firm": self.firm.slug}
        named |= {"task": "set-clock", "reason": "gas", "kind": "meter", "version": "x"}
        route = ROUTES[name]
        args = {key: value for key, value in named.items() if f":{key}>" in route}
        return f"/{route.replace('.*', '')}" if name == "api-nowhere" else reverse(name, kwargs=args)


def without_token(response):
    """The page without the form token, which is another one each time."""
    return re.sub(rb'name="csrfmiddlewaretoken" value="[^"]*"', b"", response.content)


def outcome_of(response):
    if response.status_code == 302 and response.url.startswith(reverse("desk-sign-in")):
        return "door"
    return {403: "role", 404: "gone"}.get(response.status_code, "in")


def test_every_address_of_the_site_has_a_row():
    assert set(ROUTES) == ALIKE_FOR_ALL | set(GET_ACCESS) | set(POST_ACCESS)


def test_each_of_the_cast_opens_what_is_theirs_and_nothing_else(monkeypatch):
    monkeypatch.setattr("triage.jobsheet.formats.repair_form.APPLIES_FROM", timezone.localdate())
    world = World()
    found = {}
    for name in GET_ACCESS:
        address = world.address(name)
        asked = {who: f"{address}?token={token_of(world.sheet)}" if who == "householder" else address for who in ACTORS}
        found[name] = tuple(outcome_of(world.clients[who].get(asked[who])) for who in ACTORS)
    assert found == GET_ACCESS


@pytest.mark.parametrize("name", POST_ACCESS)
def test_each_of_the_cast_sends_what_is_theirs_and_nothing_else(name):
    world = World()
    told, wanted = POST_ACCESS[name]
    address = world.address(name)
    got = [world.clients[who].post(address, told) for who in ACTORS]
    signed_out = name == "desk-sign-out"  # which leads there, because it is what was asked for
    assert tuple("in" if signed_out else outcome_of(response) for response in got) == wanted
    assert all(response.status_code < 500 for response in got)


def test_what_has_no_form_takes_no_post():
    world = World()
    owner = world.clients["owner"]
    taken = [name for name in GET_ACCESS if name not in POST_ACCESS and name.startswith("desk")]
    assert {owner.post(world.address(name)).status_code for name in taken} == {405}
    assert {owner.get(world.address(name)).status_code for name in POST_ACCESS if name not in GET_ACCESS} == {405}


def test_outside_the_desk_nobody_is_told_apart():
    world = World()
    different = {}
    for name in ALIKE_FOR_ALL:
        got = {who: world.clients[who].get(world.address(name)).status_code for who in ACTORS}
        if len(set(got.values())) > 1 or max(got.values()) >= 500:
            different[name] = got
    assert different == {}


def test_no_page_of_the_desk_may_be_kept_and_each_answers_forms_with_its_origin():
    world = World()
    for who in ("nobody", "owner"):
        for name in GET_ACCESS:
            if name.startswith("desk"):
                response = world.clients[who].get(world.address(name))
                assert "no-store" in response.headers["Cache-Control"], name
                assert response.headers["Referrer-Policy"] == "same-origin", name


@pytest.mark.parametrize("name", POST_ACCESS)
def test_every_form_needs_its_token(name):
    world = World()
    strict = Client(enforce_csrf_checks=True)
    strict.cookies = world.clients["owner"].cookies
    response = strict.post(world.address(name), POST_ACCESS[name][0])
    assert response.status_code == 403
    assert "Form expired" in response.content.decode()


def test_another_firms_job_sheet_and_none_at_all_read_alike():
    world = World()
    other = world.clients["stranger"]
    one = other.get(world.address("desk-sheet"))
    none = other.get(reverse("desk-sheet", args=["ZZZZZ-ZZZZZ"]))
    assert (one.status_code, without_token(one)) == (none.status_code, without_token(none))


def test_who_keeps_the_pack_sees_it_without_belonging_to_a_firm():
    client = Client()
    client.force_login(make_account(is_staff=True))
    save_report(ReportTopic.KNOWLEDGE, {"tree": "<svg/>"}, "x")
    assert client.get(reverse("desk-knowledge-tree")).status_code == 200
    assert client.get(reverse("desk-inbox")).url == reverse("desk-firms")


def test_a_member_who_was_removed_is_out_at_once():
    member = make_member(make_firm(), Role.OWNER)
    client = client_of(member)
    assert client.get(reverse("desk-inbox")).status_code == 200
    member.delete()
    assert client.get(reverse("desk-inbox")).url == reverse("desk-firms")


def test_a_form_is_not_sent_again_by_who_signs_in_next():
    address = reverse("desk-status", args=["AAAAA-AAAAA"])
    assert Client().post(address).url == reverse("desk-sign-in")
    assert Client().get(reverse("desk-inbox")).url == f"{reverse('desk-sign-in')}?next=%2Fdesk%2F"
