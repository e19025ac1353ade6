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


def test_every_link_and_form_htmx_follows_works_without_it():
    """A link has the same address in `href`; a form has it in `action`, where it may name a part of the page."""
    broken = []
    for path in files_ending(".html"):
        for tag in TAG.findall(text_of(path)):
            plain_name = "action" if tag.startswith("<form") else "href"
            swapped, plain = (re.search(rf'\s{name}="([^"]*)"', tag) for name in ("hx-get", plain_name))
            if swapped and (plain is None or plain[1].partition("#")[0] != swapped[1]):
                broken.append(f"{path}: {tag}")
    assert broken == []
