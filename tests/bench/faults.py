"""What breaks while people hand over: `python -m tests.bench.faults [--hand-overs N] [--sqlite | --postgres]`.

Hand-overs flow through the API while one thing after another goes wrong. At the end the database, the acknowledgements
and what the firm's receiver got have to agree to the last one. The exit code says whether they do.
"""

import argparse
import sys
import time
from dataclasses import dataclass

from tests.bench.books import judge, waiting
from tests.bench.flow import WORDLESS, Flow
from tests.bench.mishaps import mishaps_for
from tests.bench.people import REGION, people_asking
from tests.bench.server import built_static_files
from tests.bench.stand import POSTGRES, SQLITE, stand
from tests.bench.telling import say

CALM = "nothing"
LASTS = 8
# Longer than a lease, which a killed worker leaves behind, and the second wait after a failure.
DRAIN_SECONDS = 900
# With a clock so far ahead, whatever waits is due and every lease of a killed worker is over.
AHEAD = 7 * 3600
OFTEN, SELDOM = 2, 10
SHARE_FOR_SQLITE = 10


@dataclass(frozen=True)
class Verdict:
    """`wrong` names what does not agree, with how often; nothing in it is as it should be."""

    books: dict
    flow: Flow
    counts: dict
    starts: dict

    @property
    def wrong(self):
        told = {name: count for name, count in self.books.items() if name not in ("sheets", "sent")}
        told["refused for good"] = len(self.flow.refused)
        told["acknowledged twice, differently"] = self.flow.differing
        told["answers without a sentence"] = sum(
            count for (_stage, _where, words), count in self.flow.seen.items() if WORDLESS in words
        )
        told["with a wrong signature"] = self.counts["wrong signature"]
        told["came again with other bytes"] = self.counts["came again with other bytes"]
        return {name: count for name, count in told.items() if count}


def run(ground, mishaps, wanted, *, lasts=LASTS, trails=400, hurry=False):
    """The verdict on so many hand-overs with these mishaps among them. `hurry` ends the leases of killed workers by a
    delivery worker whose clock is ahead, instead of waiting."""
    _pages, advised = people_asking(trails, "faults")
    pages = {"a question page": f"/check/?region={REGION}&complaint=no-heat&danger=none", "the first page": "/"}
    flow = Flow(ground.site.port, ground.firms, advised, wanted, pages)
    flow.start()
    for number, mishap in enumerate(mishaps, 1):
        flow.wait_for(wanted * number // (len(mishaps) + 1), 1800)
        flow.stage = mishap.name
        mishap.does(ground, lasts)
        flow.wait_for(len(flow.acknowledged) + wanted // (4 * len(mishaps)) + 1, 120)
        flow.stage = CALM
    flow.finish(1800)
    _drain(ground, hurry)
    books = judge(ground.url, flow.acknowledged, ground.receiver.arrived)
    return Verdict(books, flow, ground.receiver.counts, dict(ground.keeper.starts))


def _drain(ground, hurry):
    """Until every message has been sent, or the time is over and the verdict says which was not."""
    if hurry:
        ground.keeper.keep("deliverer ahead", lambda: ground.deliverer(AHEAD))
    give_up = time.monotonic() + DRAIN_SECONDS
    while waiting(ground.url) and time.monotonic() < give_up:
        time.sleep(OFTEN if hurry else SELDOM)


def show(kind, verdict, seconds):
    flow, books = verdict.flow, verdict.books
    say(f"{kind}: {len(flow.acknowledged)} hand-overs acknowledged in {seconds:.0f} s, with every message sent")
    say(f"  {'job sheets there':<40}{books['sheets']:8}")
    say(f"  {'messages sent':<40}{books['sent']:8}")
    say(f"  {'messages that arrived':<40}{verdict.counts['messages']:8}")
    say(f"  {'of them came again, told by their id':<40}{verdict.counts['came again']:8}")
    say(f"  {'of them stamped five minutes off':<40}{verdict.counts['stamped five minutes off']:8}")
    say(f"  started again by the supervisor: {verdict.starts or 'nothing'}")
    say(f"  {'sent again on a connection that had ended':<40}{flow.reopened:8}")
    say("  longest time without an acknowledgement, and what people saw meanwhile")
    for stage, gap in flow.gaps.items():
        say(f"  {stage:<40}{gap:8.1f} s")
        for (when, where, words), count in sorted(flow.seen.items()):
            if when == stage:
                say(f"      {count} times, {where}: {words}")
    say(
        "  All is well: none lost, none doubled, none half written."
        if not verdict.wrong
        else f"  WRONG: {verdict.wrong}"
    )


def main():
    chosen = _arguments()
    kinds = {kind: count for kind, count in chosen.items() if count}
    wrong = []
    with built_static_files():
        for kind, count in kinds.items():
            began = time.monotonic()
            with _ground(kind) as ground:
                verdict = run(ground, mishaps_for(ground), count)
                show(kind, verdict, time.monotonic() - began)
                say(f"  {'the database took':<40}{ground.disk.megabytes_used():8.0f} MB" if ground.disk else "")
                wrong.append(verdict.wrong)
                if verdict.wrong:
                    say(ground.said()[-5000:])
    sys.exit(1 if any(wrong) else 0)


def _ground(kind):
    return stand(kind, own_disk=True)


def _arguments():
    """How many hand-overs for each kind of database."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench.faults", description=__doc__.splitlines()[0])
    parser.add_argument("--hand-overs", type=int, default=10_000, help="how many, and a tenth on SQLite (10000)")
    which = parser.add_mutually_exclusive_group()
    which.add_argument("--sqlite", action="store_true", help="SQLite alone, with all of them")
    which.add_argument("--postgres", action="store_true", help="PostgreSQL alone")
    told = parser.parse_args()
    if told.sqlite:
        return {SQLITE: told.hand_overs}
    return {POSTGRES: told.hand_overs, SQLITE: 0 if told.postgres else told.hand_overs // SHARE_FOR_SQLITE}


if __name__ == "__main__":
    main()
