"""An agent who reads out every line whose turn it is, as the page offers it, until no line is left."""

from urllib.parse import urlsplit

from triage.desk.call.open_call import open_call
from triage.desk.call.presenters.page import call_page

LONGEST = 60


def read_everything(rf, call, stop_at=("question", "caller", "danger", "open")):
    """The page once nothing is left to read, and every line that was read on the way."""
    spoken = []
    for _ in range(LONGEST):
        page = call_page(call)
        turn = next((line for line in page.say.lines if line.href), None)
        if turn is None or (page.say.kind in stop_at and page.say.keys):
            return page, spoken
        spoken.append(turn.text)
        call = open_call(rf.get(turn.href))
    raise AssertionError(f"still reading after {LONGEST} lines: {urlsplit(turn.href).query}")
