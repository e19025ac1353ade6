"""The places a told case or a comparison may come from, as the project itself describes them."""

from triage.knowledge.library import library


def place(code):
    """The region as the reasoning sees it."""
    return library().regions[code].region
