"""What a phone keeps in as few letters as it takes: names that nobody outside sees become short, comments go."""

import minify

from tests.offline.one_script import as_one_script
from triage.offline.classic_script import OFFLINE
from triage.offline.page_script import MINIFIED, page_source

PAGES = OFFLINE.parent / "pages"
# In the order in which they are to run; what they import comes along.
OF_A_PAGE = ("step", "start", "advice", "reading", "phone", "waiting", "read_aloud", "timer", "keep_answers")


def minified_files():
    """Each file and the text it is to have."""
    return {
        MINIFIED: _minified(page_source()),
        OFFLINE / "worker.min.js": _minified(worker_source()),
        PAGES / "page.min.js": _minified(as_one_script([PAGES / f"{name}.js" for name in OF_A_PAGE])),
    }


def worker_source():
    """The outbox and the worker, closed in themselves; SET stands before them when they are sent."""
    own = "".join((OFFLINE / name).read_text("utf-8") for name in ("outbox.js", "worker.js")).replace("\nexport ", "\n")
    return f"(()=>{{{own}}})();"


def _minified(source):
    return minify.string("application/javascript", source) + "\n"
