"""What a firm's people type at the desk, what its systems and a proxy say, and what stands in a sender's link."""

import ipaddress
from urllib.parse import urlencode, urlsplit

import pyotp
from django import forms
from django.core.exceptions import SuspiciousOperation, TooManyFieldsSent
from django.http import QueryDict
from django.test import RequestFactory, override_settings

from tests.attack.parser import Parser
from triage.desk.firm_settings import SettingsForm, initial_settings
from triage.desk.presenters.inbox import filtered_sheets, parse_filter
from triage.desk.presenters.outcome_form import parse_outcome_form
from triage.desk.second_factor import STEP_SECONDS, matching_step
from triage.household.sheet_address import query_params
from triage.jobsheet.errors import Refused
from triage.jobsheet.networks import ForbiddenTarget, is_public, parse_webhook_url
from triage.jobsheet.reference import read_reference
from triage.jobsheet.sender_token import hash_of, is_token
from triage.models import Firm, JobSheet, Member
from triage.web.client_address import client_address
from triage.web.framing import is_origin
from triage.web.rate_limit import network_of

SECRET, NOW = "GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ", 1_900_000_000.0  # the secret of RFC 6238's own test vectors
LISTS = {"name": "Hearth", "region": "ie", "accent": "#a83c12", "retention_days": "180"}
LINES = {"prices": "Call-out: £60\nHalf an hour: £30", "hours": "Monday: 8 to 18", "areas": "Kettlewick\nÜnstadt"}


def webhook(data):
    """What is taken stands whole in one request line and one Host header."""
    target = parse_webhook_url(data.decode("utf-8", "surrogateescape"))
    said = f"{target.authority}{target.path}"
    assert said.isascii()
    assert said.isprintable()
    assert " " not in said
    assert 0 <= target.port < 65536


def public(data):
    """What is public is so by the standard library too, which knows less of what is not."""
    text = data.decode("utf-8", "surrogateescape")
    if is_public(text):
        assert ipaddress.ip_address(text.partition("%")[0]).is_global or ":" in text


def origin(data):
    """What is taken is a scheme and a host and no second word of a content policy."""
    text = data.decode("utf-8", "surrogateescape")
    if is_origin(text):
        parts = urlsplit(text)
        assert f"{parts.scheme}://{parts.netloc}" == text
        assert not set(text) & set(" ;,'\"*\r\n")


def reference(data):
    read = read_reference(data.decode("utf-8", "surrogateescape"))
    assert read is None or read_reference(read) == read


def inbox(data):
    """Nothing reaches the database that PostgreSQL could not take for a text."""
    try:
        asked = QueryDict(data)
    except TooManyFieldsSent:  # more than a thousand: the page for what cannot be read
        return
    wanted = parse_filter(asked)
    _sql, values = filtered_sheets(Member(firm_id=1), wanted).query.get_compiler("default").as_sql()
    assert "\x00" not in "".join(map(str, values))
    "".join(map(str, values)).encode()
    assert parse_filter(QueryDict(wanted.query)).query == wanted.query


def settings(data):
    """What is kept can be shown and kept again, and is the same then."""
    form = SettingsForm(QueryDict(data))
    if not form.is_valid():
        raise forms.ValidationError(list(form.errors))
    again = SettingsForm(initial_settings(Firm(**form.cleaned_data)))
    assert again.is_valid(), again.errors
    assert again.cleaned_data == form.cleaned_data
    assert "\x00" not in str(form.cleaned_data)


def findings(data):
    found = parse_outcome_form(JobSheet(region="ie"), QueryDict(data))
    assert all(part == part.strip() for part in found.fitted)


def code(data):
    step = matching_step(SECRET, data.decode("utf-8", "surrogateescape"), NOW)
    assert step is None or abs(step - NOW // STEP_SECONDS) <= 1


def forwarded(data):
    request = RequestFactory().get("/", headers={"X-Forwarded-For": data.decode("latin-1")})
    with override_settings(SECURE_PROXY_SSL_HEADER=("HTTP_X_FORWARDED_PROTO", "https")):
        address = client_address(request)
    assert "," not in address
    network_of(address)


def senders_link(data):
    request = RequestFactory().get("/sheet/x/")
    request.META["QUERY_STRING"] = data.decode("latin-1")
    assert not is_token(query_params(request).get("token", ""), hash_of("another"))


def query(**fields):
    return urlencode({name.replace("_", "-"): value for name, value in fields.items()}).encode()


def staff_parsers():
    """Each by its name."""
    whole = {**LISTS, **LINES, "origins": "https://a.example", "webhook_url": "https://a.example/in"}
    outcome = {"found": "fan-element-open", "fitted": "Element", "other_parts": "a clip; a fuse", "minutes": "30"}
    given_up = {"left": "end-of-life", "barrier": "no-parts", "other_fault": "fan oven element"}
    addresses = ("93.184.215.14", "2606:2800:21f:cb07::1", "::ffff:10.0.0.1", "2002:7f00:1::", "fe80::1%eth0")
    return {
        "webhook address": Parser(
            webhook, [b"https://a.example:8443/in?x=1#y", b"https://[2606:2800::1]/"], (ForbiddenTarget,)
        ),
        "public address": Parser(public, [address.encode() for address in addresses]),
        "origin": Parser(origin, [b"https://www.a.example:8443", b"http://localhost:8000"]),
        "reference": Parser(reference, [b"KD7MX-4QPTR", b"kilo delta seven mike x-ray, four quebec papa tango romeo"]),
        "inbox query": Parser(
            inbox,
            [query(status="new", band="qualified", since="2026-03-01", until="9999-12-31", words="KD7MX 4QPTR")],
        ),
        "settings form": Parser(
            settings,
            [urlencode(LISTS).encode(), urlencode(whole).encode()],
            (forms.ValidationError, SuspiciousOperation),
        ),
        "findings": Parser(
            findings,
            [urlencode({**outcome, "result": "first-visit"}).encode(), urlencode({**outcome, **given_up}).encode()],
            (Refused, SuspiciousOperation),
        ),
        "code": Parser(code, [pyotp.HOTP(SECRET).at(int(NOW) // STEP_SECONDS).encode(), b"123 456"]),
        "X-Forwarded-For": Parser(forwarded, [b"203.0.113.9, 2001:db8::1", b"::ffff:192.0.2.1"]),
        "sender's link": Parser(senders_link, [b"token=0123456789abcdef0123456789abcdef01234567&sent=yes"]),
    }
