"""The phone's pages and the engine under them as one classic script; `openSite` and `answerPage` are its way in.

It is minified, because everything offline has to weigh little, and kept as a file, because the program that minifies is
a tool for writing the site and not for running it. `python -m tests.offline` writes the file; a test compares.
"""

from functools import cache
from hashlib import sha256

from triage.offline.classic_script import DIGEST_LENGTH, OFFLINE, ClassicScript, joined

PAGES = OFFLINE / "pages"
ENTRY = "answer_page.js"
MINIFIED = OFFLINE / "pages.min.js"
WAYS_IN = ("openSite", "answerPage")


@cache
def page_script() -> ClassicScript:
    text = MINIFIED.read_text("utf-8")
    return ClassicScript(text, sha256(text.encode()).hexdigest()[:DIGEST_LENGTH])


@cache
def page_source() -> str:
    """What is minified: every module in order, closed in itself but for the ways in."""
    ways = "".join(f"self.{name}={name};" for name in WAYS_IN)
    return f"(()=>{{{joined(PAGES / ENTRY).text}{ways}}})();\n"
