"""What happens at once and what happens when a worker is killed, on a real SQLite file: run as a program by the test.

Writes one JSON object. The same races run in the test's own process where its database is PostgreSQL.
"""

import json
import os
import signal
import sys
from collections import Counter
from threading import Barrier, Thread

AT_ONCE = 8
MESSAGES = 12


def race(work):
    """Do `work` in several threads that start together; what each returned or raised."""
    from django.db import connections

    barrier, results = Barrier(AT_ONCE), []

    def one():
        barrier.wait()
        try:
            results.append(work())
        except Exception as mishap:
            results.append(repr(mishap))
        finally:
            connections.close_all()

    threads = [Thread(target=one) for _ in range(AT_ONCE)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return results


def hand_over_at_once():
    """The same request from several places at the same moment."""
    from tests.firm_builders import make_firm, make_job_sheet

    firm = make_firm()
    references = race(lambda: make_job_sheet(firm, idempotency_key="one-and-the-same").reference)
    return {
        "answers": len(references),
        "references": len(set(references)),
        "sheets": firm.job_sheets.count(),
        "deliveries": firm.deliveries.count(),
    }


def deliver_at_once():
    """Several workers and a dozen messages: how often each was sent."""
    from tests.firm_builders import make_delivery, make_firm
    from triage.jobsheet.delivery import deliver_due, new_worker
    from triage.models import Delivery

    Delivery.objects.all().delete()
    firm, sent = make_firm(), []
    for _ in range(MESSAGES):
        make_delivery(firm)
    counts = race(lambda: deliver_due(new_worker(), lambda delivery, _now: sent.append(delivery.message_id)))
    states = Counter(firm.deliveries.values_list("state", flat=True))
    return {"attempts": sum(counts), "sent": len(sent), "different": len(set(sent)), "states": dict(states)}


def kill_a_worker():
    """A worker dies with the message half sent; a second one sends it again, under the same id."""
    from django.db import connections
    from django.utils import timezone

    from tests.firm_builders import make_delivery, make_firm
    from tests.jobsheet.receivers import answers, hangs, receiver
    from triage.jobsheet.delivery import deliver_due, new_worker

    with receiver(hangs) as box:
        firm = make_firm(webhook_url=box.url)
        delivery = make_delivery(firm)
        connections.close_all()  # an open SQLite file must not cross the fork
        child = os.fork()
        if child == 0:
            deliver_due(new_worker())
            os._exit(0)
        box.arrived.wait(60)
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        delivery.refresh_from_db()
        left = {"state": delivery.state, "leased": bool(delivery.leased_by)}
        too_early = deliver_due(new_worker())
        firm.deliveries.update(lease_until=timezone.now())
        box.behave = answers(204)
        deliver_due(new_worker())
        delivery.refresh_from_db()
        ids = [headers["webhook-id"] for headers, _body in box.requests]
    return {"left": left, "too_early": too_early, "ids": ids, "kept": len(box.kept), "state": delivery.state}


def main():
    import django

    django.setup()
    from django.core.management import call_command

    call_command("migrate", verbosity=0)
    found = {"hand_over": hand_over_at_once(), "deliver": deliver_at_once(), "kill": kill_a_worker()}
    sys.stdout.write(json.dumps(found))


if __name__ == "__main__":
    main()
