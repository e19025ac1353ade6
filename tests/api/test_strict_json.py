"""Bodies too large, too deep, twice said or no JSON at all are told in a sentence before they cost anything."""

import pytest
from django.http import UnreadablePostError
from django.test import RequestFactory

from triage.api.strict_json import read_json
from triage.web.json_errors import ApiError, ErrorKind


def asked(body, content_type="application/json", **meta):
    return RequestFactory().post("/", body, content_type=content_type, **meta)


def trouble_with(request, most=1000):
    with pytest.raises(ApiError) as caught:
        read_json(request, most)
    return caught.value


@pytest.mark.parametrize("content_type", ["application/json", "application/json; charset=utf-8", "Application/JSON"])
def test_json_is_read(content_type):
    result = read_json(asked('{"a": [1, -2.5e3, "ä😀", null, true]}'.encode(), content_type), 1000)
    assert result == {"a": [0, 0, "ä😀", None, True]}


@pytest.mark.parametrize("content_type", ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data", ""])
def test_another_type_is_refused(content_type):
    trouble = trouble_with(asked(b"{}", content_type))
    assert (trouble.kind, trouble.detail) == (
        ErrorKind.UNSUPPORTED_MEDIA_TYPE,
        "Send JSON, with the header Content-Type: application/json.",
    )


@pytest.mark.parametrize(
    ("body", "sentence"),
    [
        (b" ", "The body is not JSON. Look at line 1, column 2."),
        (b'{"a":\n 1,}', "The body is not JSON. Look at line 2, column 4."),
        (b"\xef\xbb\xbf{}", "The body is not JSON. Look at line 1, column 1."),
        ('{"a": 1}'.encode("utf-16"), "The body is not text in UTF-8."),
        (b"\xff", "The body is not text in UTF-8."),
        (b'{"a": NaN}', "NaN and Infinity are not JSON."),
        (
            b'{"a": 1, "b": {"c": 1, "c": 1}}',
            "A name stands twice in one object of the body. Leave one of the two out.",
        ),
        (b'{"a": "\x00"}', "The body is not JSON. Look at line 1, column 8."),
    ],
)
def test_what_is_not_json_is_told_where(body, sentence):
    trouble = trouble_with(asked(body))
    assert (trouble.kind, trouble.detail) == (ErrorKind.BAD_REQUEST, sentence)


@pytest.mark.parametrize("opening", [b"[", b'{"a":'])
def test_what_is_too_deep_is_refused(opening):
    trouble = trouble_with(asked(opening * 100_000), 10**6)
    assert trouble.detail == "The body has objects or lists too deep inside each other."


def test_a_huge_number_costs_nothing():
    assert read_json(asked(b"9" * 900_000), 10**6) == 0
    assert read_json(asked(b"1e999999"), 10**6) == 0


def test_what_is_too_large_is_refused_by_its_length_before_it_is_read():
    request = asked(b"{}", CONTENT_LENGTH="20000000")
    request.read = lambda *_: pytest.fail("it was read")
    trouble = trouble_with(request)
    assert (trouble.kind, trouble.detail) == (ErrorKind.CONTENT_TOO_LARGE, "The body may have 1000 bytes at the most.")
    assert trouble_with(asked(b"{}", CONTENT_LENGTH="9" * 5000)).kind is ErrorKind.CONTENT_TOO_LARGE


def test_what_says_no_length_is_refused_once_it_is_too_long():
    request = asked(b"{}")
    request.read = lambda size: b" " * size
    assert trouble_with(request).kind is ErrorKind.CONTENT_TOO_LARGE


def test_no_body_and_a_body_in_chunks_are_told():
    request = asked(b"{}")
    request.read = lambda _size: b""
    assert trouble_with(request).detail == (
        "There is no body. Send it whole, with its length in Content-Length and not in chunks."
    )


def test_a_body_that_breaks_off_is_told():
    request = asked(b"{}")

    def broken(_size):
        raise UnreadablePostError

    request.read = broken
    assert trouble_with(request).detail == "The body did not arrive whole. Send it again."
