"""Everything far too large: a page, or a sentence, and never a traceback or a wait."""

import json

import pytest

from tests.api.asking import address, bearer, body_of, booked, firm_with_key
from tests.api.asking import send as send_json
from tests.attack.whole_site import ROUTES, World
from tests.firm_builders import make_firm
from tests.household.hand_overs import form_address, send
from triage.models import JobSheet

pytestmark = pytest.mark.django_db

HUGE = "x" * 200_000
MANY = "&".join(f"a{number}=b" for number in range(20_000))


@pytest.mark.parametrize(
    "query", [HUGE, MANY, f"complaint={HUGE}", f"{HUGE}=1", "&" * 100_000, "=" * 100_000, "%" * 99_999]
)
def test_no_address_breaks_on_a_query_without_end(query):
    world = World()
    broken = {}
    for name in ROUTES:
        answer = world.clients["owner"].get(f"{world.address(name)}?{query}")
        if answer.status_code >= 500:
            broken[name] = answer.status_code
    assert broken == {}


@pytest.mark.parametrize(
    "header", ["Accept-Language", "User-Agent", "If-None-Match", "Accept-Encoding", "Origin", "Cookie"]
)
def test_no_page_breaks_on_a_header_without_end(client, header):
    for path in ("/?complaint=no-heat", "/desk/", "/api/v1/step", "/health/"):
        assert client.get(path, headers={header: "a,;=*" * 40_000}).status_code < 500


@pytest.mark.parametrize(
    "path", ["/sheet/{}/", "/desk/sheets/{}/", "/desk/invitation/{}/", "/embed/{}/", "/api/v1/firms/{}/job-sheets"]
)
def test_no_path_without_end_breaks(client, path):
    assert client.get(path.format(HUGE)).status_code in (302, 400, 401, 404, 405)


@pytest.mark.parametrize(
    "field", ["name", "telephone", "email", "street", "access", "serial", "day-1", "part-1", "agreed", "state"]
)
def test_each_field_of_the_form_has_an_end(client, field):
    answer = send(client, form_address(make_firm()), **{field: HUGE})
    if field not in ("part-1", "agreed"):
        assert answer.status_code == 422
        assert JobSheet.objects.count() == 0
    else:
        assert answer.status_code == 302


def test_a_form_with_a_thousand_fields_more_is_told_so(client):
    more = {f"field-{number}": "x" for number in range(1100)}
    assert send(client, form_address(make_firm()), **more).status_code == 422


@pytest.mark.parametrize(
    "data",
    [
        b'{"a":' * 100_000,
        b"[" * 300_000,
        b'{"region":' + b"9" * 1_000_000 + b"}",
        json.dumps(body_of(trail=[["a", "b"]] * 5000)).encode(),
        json.dumps(booked(name=HUGE)).encode(),
        json.dumps({**body_of(), HUGE: 1}).encode(),
        json.dumps(body_of(photo="A" * 3_000_000)).encode(),
        b"\xff" * 100_000,
    ],
    ids=["objects", "lists", "a number", "a trail", "a text", "a name", "a photo", "no text"],
)
def test_no_body_of_the_api_breaks_it(client, data):
    firm, key = firm_with_key()
    answer = send_json(client, firm, data, **bearer(key))
    assert answer.status_code in (400, 413, 422)
    assert len(answer.content) < 4000
    assert JobSheet.objects.count() == 0


def test_a_key_or_a_token_without_end_opens_nothing(client):
    firm, _key = firm_with_key()
    assert client.get(address(firm, "AAAAA-AAAAA"), headers=bearer(HUGE)).status_code == 401
    assert client.get(f"/sheet/AAAAA-AAAAA/?token={HUGE}").status_code == 404


def test_a_password_without_end_costs_no_more_than_a_long_one(client):
    answer = client.post("/desk/sign-in/", {"account": HUGE, "password": HUGE})
    assert answer.status_code == 400
