"""The code holds the link to the caller's own page; its size is what ISO/IEC 18004 gives for that many bytes."""

import xml.etree.ElementTree as ElementTree

# ISO/IEC 18004, table 7: the most bytes of a symbol with error correction L, for version 1 and 40.
MOST_BYTES = 2953


def test_the_code_is_a_picture_that_no_one_keeps(client):
    response = client.get("/desk/call/phone.svg?region=gb-eng&complaint=no-heat&call-alone=alone")
    assert response.headers["Content-Type"] == "image/svg+xml"
    assert "no-store" in response.headers["Cache-Control"]
    root = ElementTree.fromstring(response.content)
    side = int(root.attrib["width"])
    assert (side - 8 - 17) % 4 == 0  # a quiet zone of four on each side, and 17 + 4 * version modules


def test_what_is_known_of_the_caller_is_not_in_it(client):
    plain = client.get("/desk/call/phone.svg?region=gb-eng&complaint=no-heat").content
    assert client.get("/desk/call/phone.svg?region=gb-eng&complaint=no-heat&call-alone=alone").content == plain
    assert client.get("/desk/call/phone.svg?region=gb-eng&complaint=trips").content != plain


def test_a_check_too_long_for_a_code_says_so(client, monkeypatch):
    monkeypatch.setattr("triage.desk.call.open_call.Call.phone_href", "https://example.org/" + "x" * MOST_BYTES)
    response = client.get("/desk/call/phone.svg?region=gb-eng")
    assert response.status_code == 413
    assert response.content.decode() == "This check is too long for a code. Send the link as text."
