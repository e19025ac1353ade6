"""The manifest names pictures of the size they have, and addresses that are there."""

from io import BytesIO

import pytest
from PIL import Image


@pytest.fixture
def manifest(client):
    response = client.get("/manifest.webmanifest")
    assert response.headers["Content-Type"] == "application/manifest+json"
    return response.json()


def test_each_icon_is_a_picture_of_its_size(client, manifest):
    for icon in manifest["icons"]:
        picture = Image.open(BytesIO(b"".join(client.get(icon["src"]).streaming_content)))
        assert f"{picture.width}x{picture.height}" == icon["sizes"]
        assert picture.format == "PNG"
    assert {icon["sizes"] for icon in manifest["icons"]} >= {"192x192", "512x512"}


def test_the_drawing_of_the_maskable_icon_stays_in_the_safe_zone(client, manifest):
    """The W3C's manifest lets a phone cut away all but a circle of four fifths of the icon's width."""
    (icon,) = [icon for icon in manifest["icons"] if icon["purpose"] == "maskable"]
    picture = Image.open(BytesIO(b"".join(client.get(icon["src"]).streaming_content))).convert("RGB")
    middle, ground = picture.width / 2, picture.getpixel((0, 0))
    outside = [
        (x, y)
        for x in range(picture.width)
        for y in range(picture.height)
        if (x - middle) ** 2 + (y - middle) ** 2 > (0.4 * picture.width) ** 2 and picture.getpixel((x, y)) != ground
    ]
    assert outside == []


def test_its_addresses_are_there(client, manifest):
    for address in (manifest["start_url"], manifest["scope"], *(way["url"] for way in manifest["shortcuts"])):
        assert client.get(address).status_code == 200


def test_a_shared_text_opens_the_first_page_without_a_word_of_complaint(client, manifest):
    shared = manifest["share_target"]
    response = client.get(shared["action"], {shared["params"]["text"]: "my oven is cold"})
    assert response.status_code == 200
    assert "could not be used" not in response.content.decode()
