"""Setting the second factor up and switching it off; the drawing is read by an independent reader of QR codes."""

import io
import re

import pyotp
import pytest
import segno
import zxingcpp
from django.urls import reverse
from PIL import Image

from tests.desk.clients import client_of
from tests.firm_builders import make_firm, make_member
from tests.reading_pages import read_page
from triage.desk.second_factor import provisioning_uri

pytestmark = pytest.mark.django_db

FACTOR = reverse("desk-second-factor")


@pytest.fixture
def member():
    return make_member(make_firm())


def begun(client):
    return read_page(client.get(FACTOR)).one("code").text.replace(" ", "")


def test_a_code_from_an_authenticator_switches_it_on_and_one_more_off(member):
    client = client_of(member)
    secret = begun(client)
    assert begun(client) == secret
    assert client.post(FACTOR, {"code": "000000"}).status_code == 400
    assert client.post(FACTOR, {"code": pyotp.TOTP(secret).now()}).url == reverse("desk-account")
    member.refresh_from_db()
    assert member.totp_secret == secret
    page = client.get(FACTOR).content.decode()
    assert secret[:4] not in page
    assert client.post(FACTOR, {"code": "1"}).status_code == 400
    member.totp_last = 0
    member.save()
    client.post(FACTOR, {"code": pyotp.TOTP(secret).now()})
    member.refresh_from_db()
    assert member.totp_secret == ""


def test_the_drawing_holds_the_same_secret(member):
    client = client_of(member)
    secret = begun(client)
    address = provisioning_uri(secret, member.user.username, member.firm.name)
    drawn = re.search(r"<svg.*?</svg>", client.get(FACTOR).content.decode(), re.DOTALL)[0]
    assert segno.make(address, micro=False).svg_inline(scale=4, light="#fff", svgclass="qr", lineclass=None) == drawn
    dots = io.BytesIO()
    segno.make(address, micro=False).save(dots, kind="png", scale=4)
    assert pyotp.parse_uri(zxingcpp.read_barcode(Image.open(dots)).text).secret == secret
