"""What breaks while people hand over: `python -m tests.bench.faults [--hand-overs N] [--sqlite | --postgres]`.

Hand-overs flow through the API while one thing after another goes wrong. At the end the database, the acknowledgements
and what the firm's receiver got have to agree to the last one. The exit code says whether they do.
"""

import argparse
import sys
import time
from dataclasses import dataclass

from tests.bench.environment import POSTGRES, SQLITE, running_environment
from tests.bench.flow import CALM, LOOKED_AT, SILENCE, WORDLESS, Flow
from tests.bench.injected_faults import faults_for
from tests.bench.ledger import judge, waiting
from tests.bench.output import say
from tests.bench.server import built_static_files
from tests.bench.workload import simulated_workload

LASTS = 8
PATIENCE = 600
# Longer than the lease that a killed worker leaves behind, and than the waits of a message that failed in every mood.
DRAIN_SECONDS = 1500
LOOK_EVERY = 5
SHARE_FOR_SQLITE = 5


@dataclass(frozen=True)
class Verdict:
    """`wrong` names what does not agree, with how often; nothing in it is as it should be. A check needs no database,
    so that nothing but a server that was killed may keep its pages away."""

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
        told["failed while nothing was the matter"] = sum(
            count for (stage, _where, words), count in self.flow.seen.items() if stage == CALM and words[0] == "5"
        )
        told["pages of a check that failed"] = sum(
            count for (_stage, where, words), count in self.flow.seen.items() if where in LOOKED_AT and words != SILENCE
        )
        told["with a wrong signature"] = self.counts["wrong signature"]
        told["came again with other bytes"] = self.counts["came again with other bytes"]
        return {name: count for name, count in told.items() if count}


def run(environment, faults, wanted, *, lasts=LASTS, checks=400, hurry=False):
    """The verdict on at least so many hand-overs with these faults among them. `hurry` makes the waits of messages
    end in the books instead of waiting."""
    _pages, advised = simulated_workload(checks, "faults")
    flow = Flow(environment.site.port, environment.firms, advised)
    share = wanted // (2 * len(faults) + 1) + 1
    flow.start()
    for fault in faults:
        flow.wait_for(share, PATIENCE)
        flow.stage = fault.name
        fault.does(environment, lasts)
        flow.wait_for(share, PATIENCE)
        flow.stage = CALM
    flow.wait_for(wanted - len(flow.acknowledged), PATIENCE)
    flow.finish()
    _drain(environment, hurry)
    books = judge(environment.url, flow.acknowledged, environment.receiver.arrived)
    return Verdict(books, flow, environment.receiver.counts, dict(environment.supervisor.starts))


def _drain(environment, hurry):
    """Until every message has been sent, or the time is over and the verdict says which was not."""
    give_up = time.monotonic() + DRAIN_SECONDS
    while waiting(environment.url, hurry=hurry) and time.monotonic() < give_up:
        time.sleep(1 if hurry else LOOK_EVERY)


def show(kind, verdict, seconds):
    flow, books = verdict.flow, verdict.books
    say(f"{kind}: {len(flow.acknowledged)} hand-overs acknowledged in {seconds:.0f} s, with every message sent")
    say(f"  {'by the form, the others by the API':<40}{flow.by_form:8}")
    say(f"  {'job sheets there':<40}{books['sheets']:8}")
    say(f"  {'messages sent':<40}{books['sent']:8}")
    say(f"  {'messages that arrived':<40}{verdict.counts['messages']:8}")
    say(f"  {'of them came again, told by their id':<40}{verdict.counts['came again']:8}")
    say(f"  {'refused by the receiver for their stamp':<40}{verdict.counts['refused for its stamp']:8}")
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
    wrong = []
    with built_static_files():
        for kind, count in _counts(chosen).items():
            began = time.monotonic()
            with running_environment(kind, own_disk=True) as environment:
                verdict = run(environment, faults_for(environment), count, lasts=chosen.lasts)
                show(kind, verdict, time.monotonic() - began)
                say(f"  {'the database took':<40}{environment.disk.megabytes_used():8.0f} MB")
                wrong.append(verdict.wrong)
                if verdict.wrong:
                    say(environment.said()[-5000:])
    sys.exit(1 if any(wrong) else 0)


def _counts(chosen):
    """How many hand-overs for each kind of database."""
    if chosen.sqlite:
        return {SQLITE: chosen.hand_overs}
    if chosen.postgres:
        return {POSTGRES: chosen.hand_overs}
    return {POSTGRES: chosen.hand_overs, SQLITE: chosen.hand_overs // SHARE_FOR_SQLITE}


def _arguments():
    parser = argparse.ArgumentParser(prog="python -m tests.bench.faults", description=__doc__.splitlines()[0])
    parser.add_argument(
        "--hand-overs", type=int, default=10_000, help="how many at least, and a fifth of them on SQLite (10000)"
    )
    parser.add_argument("--lasts", type=int, default=LASTS, help=f"how many seconds a fault lasts ({LASTS})")
    which = parser.add_mutually_exclusive_group()
    which.add_argument("--sqlite", action="store_true", help="SQLite alone, with all of them")
    which.add_argument("--postgres", action="store_true", help="PostgreSQL alone")
    return parser.parse_args()


if __name__ == "__main__":
    main()
