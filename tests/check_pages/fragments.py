"""What a fragment of a page says, as a person reads it: without tags, with single spaces."""

import re
from html import unescape

from django.template.loader import render_to_string


def words_of(fragment, **context):
    return one_line(render_to_string(f"triage/_{fragment}.html", context))


def lines_of(fragment, **context):
    """Each paragraph by itself."""
    html = render_to_string(f"triage/_{fragment}.html", context)
    return [one_line(paragraph) for paragraph in re.findall(r"<p[ >].*?</p>", html, re.DOTALL)]


def caption_of(drawing):
    return words_of("drawing_caption", facts=drawing.facts)


def lines_about(drawing):
    """What a reading says under its drawing."""
    return lines_of("reading_lines", facts=drawing.facts)


def one_line(html):
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", html)).split())
