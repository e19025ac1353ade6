"""The fault bench works on a small scale, on SQLite, and its books find whatever would be wrong."""

import os
import signal
import subprocess
import sys
from dataclasses import replace

import pytest

from tests.bench.books import judged
from tests.bench.faults import Verdict, run, show
from tests.bench.flow import CALM, SILENCE, WORDLESS, Flow, words_of
from tests.bench.keeper import Keeper
from tests.bench.mishaps import DELIVERER_KILLED, WEB_KILLED, receiver_in
from tests.bench.server import built_static_files
from tests.bench.stand import SQLITE, stand
from tests.bench.wire import Answer
from tests.firm_builders import make_firm, make_job_sheet
from triage.models import AccessLine, Delivery

FEW = 12
RIGHT = {"sheets": 2, "sent": 2}


def test_a_few_hand_overs_survive_killed_workers_and_a_receiver_that_forgets_to_say_so(capsys):
    mishaps = [WEB_KILLED, receiver_in("storing it and closing early"), DELIVERER_KILLED]
    with built_static_files(), stand(SQLITE, own_disk=False, firms=3) as ground:
        verdict = run(ground, mishaps, FEW, lasts=1, checks=20, hurry=True)
    show(SQLITE, verdict, 1)
    assert verdict.wrong == {}, ground.said()
    assert FEW <= len(verdict.flow.acknowledged) == verdict.books["sheets"] == len(ground.receiver.arrived)
    assert verdict.flow.by_form >= 1
    assert verdict.starts["deliverer"] >= 1
    assert "All is well" in capsys.readouterr().out


@pytest.fixture
def kept(db):
    """Two sheets that were handed over, acknowledged and delivered: what was acknowledged, and what arrived."""
    firm = make_firm(email="")
    sheets = [make_job_sheet(firm, idempotency_key=f"key-number-{number}-of-two") for number in (1, 2)]
    Delivery.objects.update(state="sent")
    messages = Delivery.objects.values_list("message", "sheet__reference")
    return {sheet.idempotency_key: sheet.reference for sheet in sheets}, dict(messages)


def wrongs(kept):
    return {name: count for name, count in judged(*kept).items() if count}


def test_books_that_agree_have_nothing_wrong(kept):
    assert wrongs(kept) == RIGHT


def test_a_lost_hand_over_is_found(kept):
    acknowledged, arrived = kept
    assert wrongs(({**acknowledged, "another": "AAAAA-BBBBB"}, arrived)) == {**RIGHT, "acknowledged but not there": 1}


def test_a_sheet_under_another_reference_is_found(kept):
    acknowledged, arrived = kept
    changed = dict.fromkeys(acknowledged, "AAAAA-BBBBB")
    assert wrongs((changed, arrived)) == {**RIGHT, "acknowledged under another reference": 2}


def test_a_sheet_nobody_was_told_of_is_found(kept):
    acknowledged, arrived = kept
    one = dict(list(acknowledged.items())[:1])
    assert wrongs((one, arrived)) == {**RIGHT, "there but never acknowledged": 1}


def test_a_doubled_hand_over_is_found(kept):
    """The database lets a firm have a key once, so the double stands under another firm."""
    acknowledged, arrived = kept
    key = next(iter(acknowledged))
    make_job_sheet(make_firm(email="", webhook_url=""), idempotency_key=key)
    found = wrongs((acknowledged, arrived))
    assert found["there twice"] == 1


def test_messages_that_wait_or_never_came_or_came_about_another_sheet_are_found(kept):
    acknowledged, arrived = kept
    first, second = arrived
    Delivery.objects.filter(message=first).update(state="waiting")
    found = wrongs((acknowledged, {first: arrived[second]}))
    assert found == {
        "sheets": 2,
        "sent": 1,
        "not sent": 1,
        "sent but never arrived": 1,
        "arrived about another sheet": 1,
    }


def test_a_sheet_without_its_message_or_its_line_is_half_written(kept):
    acknowledged, arrived = kept
    first = next(iter(arrived))
    Delivery.objects.filter(message=first).delete()
    assert wrongs((acknowledged, {m: r for m, r in arrived.items() if m != first}))["half written"] == 1
    AccessLine.objects.all().delete()
    assert wrongs((acknowledged, arrived))["half written"] == 2


def verdict_of(seen):
    flow = Flow(0, [None], [None])
    flow.seen.update(seen)
    return Verdict(RIGHT, flow, dict.fromkeys(("wrong signature", "came again with other bytes"), 0), {})


def test_words_are_asked_of_every_answer_and_pages_of_a_check_may_not_fail():
    spoken = verdict_of({("the disk full", "the API", "500: Try again in a while."): 7})
    assert spoken.wrong == {}
    assert verdict_of({("the disk full", "the form", f"500: {WORDLESS}"): 2}).wrong == {"answers without a sentence": 2}
    failed = {("the disk full", "a question page", "500: Something went wrong on our side"): 3}
    assert verdict_of(failed).wrong == {"pages of a check that failed": 3}
    assert verdict_of({("a web worker killed", "the first page", SILENCE): 1}).wrong == {}
    calm = {(CALM, "the API", "500: Try again in a while."): 1, (CALM, "the API", SILENCE): 1}
    assert verdict_of(calm).wrong == {"failed while nothing was the matter": 1}
    assert replace(spoken, books={**RIGHT, "half written": 1}).wrong == {"half written": 1}


def answer(body, head=b""):
    return Answer(500, head, body)


def test_what_people_read_is_its_heading_or_its_detail():
    assert words_of(answer(b"<h1 class='x'> Sorry </h1>")) == "500: Sorry"
    assert words_of(answer(b'{"detail": "Try again."}', b"application/problem+json")) == "500: Try again."
    assert words_of(answer(b"Server Error (500)")) == f"500: {WORDLESS}Server Error (500)"
    assert WORDLESS in words_of(answer(b"<h1>KeyError</h1><pre>Traceback (most recent call last)</pre>"))


def test_the_supervisor_starts_again_what_was_killed():
    def start():
        return subprocess.Popen([sys.executable, "-c", "import time; time.sleep(60)"])

    with Keeper() as keeper:
        keeper.keep("sleeper", start)
        first = keeper.processes["sleeper"]
        os.kill(first.pid, signal.SIGKILL)
        first.wait()
        while keeper.processes["sleeper"] is first:
            keeper.stopping.wait(0.05)
        assert keeper.starts == {"sleeper": 1}
        assert keeper.processes["sleeper"].poll() is None
    assert keeper.processes["sleeper"].poll() is not None
