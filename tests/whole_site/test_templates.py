"""Templates fit the strict content policy and work without JavaScript."""

import re

import pytest

from tests.whole_site.project_files import files_ending, text_of

TAG = re.compile(r"<[a-z](?:\"[^\"]*\"|'[^']*'|[^>\"'])*>", re.IGNORECASE)
FORBIDDEN = {
    "an inline script": r"<script(?![^>]*\bsrc=)",
    "an inline stylesheet": r"<style\b",
    "a style attribute": r"<[^>]*\sstyle\s*=",
    "an event attribute": r"<[^>]*\son[a-z]+\s*=",
    "an htmx event attribute": r"<[^>]*\s(data-)?hx-on\b",
    "an address of another site": r"(src|href|action)\s*=\s*[\"']?(https?:)?//",
}


@pytest.mark.parametrize("what", FORBIDDEN)
def test_no_template_has(what):
    pattern = re.compile(FORBIDDEN[what], re.IGNORECASE)
    assert [str(path) for path in files_ending(".html") if pattern.search(text_of(path))] == []


def test_every_link_htmx_follows_is_a_link_without_it():
    broken = []
    for path in files_ending(".html"):
        for tag in TAG.findall(text_of(path)):
            swapped, plain = (re.search(rf'\s{name}="([^"]*)"', tag) for name in ("hx-get", "href"))
            if swapped and (plain is None or plain[1] != swapped[1]):
                broken.append(f"{path}: {tag}")
    assert broken == []
