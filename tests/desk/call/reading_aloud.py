"""An agent who reads out every line whose turn it is, as the page offers it, until no line is left."""

from urllib.parse import urlsplit

from tests.household.checks_done import answers_of
from triage.desk.call.presenters.page import call_page

LONGEST = 60
ELEMENT = answers_of("fan-element-open", "no-heat")


def read_everything(reopen, call, stop_at=("question", "caller", "danger", "open")):
    """The page once nothing is left to read, and every line that was read on the way."""
    spoken = []
    for _ in range(LONGEST):
        page = call_page(call)
        turn = next((line for line in page.prompt.lines if line.href), None)
        if turn is None or (page.prompt.kind in stop_at and page.prompt.keys):
            return page, spoken
        spoken.append(turn.text)
        call = reopen(turn.href)
    raise AssertionError(f"still reading after {LONGEST} lines: {urlsplit(turn.href).query}")


def query_of(answers):
    return "&".join(f"{name}={answer}" for name, answer in answers.items())


def told_and_read(call, reopen, answers=ELEMENT, **more):
    """The query of a call in which all this was answered, and everything that has to be heard was read out."""
    page, _ = read_everything(reopen, call(query_of(answers), **{"call_board": "yes", "call_id": "ABCDE", **more}))
    return page.query
