"""The site's own books, opened and closed in a process of their own: `python -m tests.bench.ledger open|judge`.

`open` makes the tables and the firms, each with a key, and prints them. `judge` reads what was acknowledged and what
arrived, and prints what the database has to say to that. There are many firms so that no key comes near its limit.
"""

import json
import subprocess
import sys
from collections import Counter

from tests.bench.server import ROOT, process_environment

FIRMS = 100


def open_ledger(database, webhook="", firms=FIRMS):
    """Each firm's short name and key."""
    return _ask(database, "open", {"webhook": webhook, "firms": firms})


def judge(database, acknowledged, arrived):
    """What is wrong with the books, by name: each count has to be none, but for `sheets` and `sent`."""
    return _ask(database, "judge", {"acknowledged": acknowledged, "arrived": arrived})


def waiting(database, *, hurry=False):
    """How many messages are still on their way. `hurry` makes them due now, as if their waits and leases were over."""
    return _ask(database, "waiting", {"hurry": hurry})


def size(database):
    """How many job sheets there are, and the bytes of the whole database."""
    return _ask(database, "size", {})


def _ask(database, deed, told):
    command = [sys.executable, "-m", "tests.bench.ledger", deed]
    chosen = process_environment(DATABASE_URL=database)
    done = subprocess.run(command, cwd=ROOT, env=chosen, input=json.dumps(told), text=True, capture_output=True)
    if done.returncode:
        raise RuntimeError(f"The books could not be read:\n{done.stderr}")
    return json.loads(done.stdout)


def main():
    import django

    django.setup()
    told = json.load(sys.stdin)
    deeds = {"open": opened, "judge": judged, "waiting": _waiting, "size": _size}
    json.dump(deeds[sys.argv[1]](**told), sys.stdout)


def opened(webhook, firms):
    from django.core.management import call_command

    from triage.jobsheet.formats.webhook import new_secret
    from triage.models import Firm
    from triage.web.api_keys import make_key

    call_command("migrate", verbosity=0)
    made = []
    for number in range(firms):
        hook = {"webhook_url": f"{webhook}{number}", "webhook_secret": new_secret()} if webhook else {}
        firm = Firm.objects.create(slug=f"bench-{number}", name=f"Bench firm {number}", region="gb-eng", **hook)
        key = make_key(firm=firm, name="bench")[1]
        made.append({"slug": firm.slug, "key": key, "secret": firm.webhook_secret})
    return made


def _waiting(hurry):
    from django.utils import timezone

    from triage.models import Delivery

    left = Delivery.objects.filter(state="waiting")
    if hurry:
        left.filter(lease_until=None).update(next_attempt=timezone.now())
        left.exclude(lease_until=None).update(lease_until=timezone.now())
    return left.count()


def _size():
    from django.db import connection

    from triage.models import JobSheet

    whole = "SELECT page_count * page_size FROM pragma_page_count(), pragma_page_size()"
    if connection.vendor == "postgresql":
        whole = "SELECT pg_database_size(current_database())"
    with connection.cursor() as cursor:
        found = cursor.execute(whole)
        return {"sheets": JobSheet.objects.count(), "bytes": (found or cursor).fetchone()[0]}


def judged(acknowledged, arrived):
    """`acknowledged` is each request's key with the reference it was answered; `arrived` each message's with its."""
    from triage.models import Delivery, JobSheet

    kept = list(JobSheet.objects.values_list("idempotency_key", "reference"))
    times = Counter(key for key, _reference in kept)
    messages = dict(Delivery.objects.filter(channel="webhook").values_list("message_id", "sheet__reference"))
    return {
        "sheets": len(kept),
        "sent": Delivery.objects.filter(state="sent").count(),
        "acknowledged but not there": sum(1 for key in acknowledged if not times[key]),
        "there twice": sum(1 for count in times.values() if count > 1),
        "acknowledged under another reference": sum(
            1 for pair in kept if acknowledged.get(pair[0]) not in (None, pair[1])
        ),
        "there but never acknowledged": sum(1 for key in times if key not in acknowledged),
        "not sent": Delivery.objects.exclude(state="sent").count(),
        "sent but never arrived": sum(1 for message in messages if message not in arrived),
        "arrived about another sheet": sum(1 for m, reference in arrived.items() if messages.get(m) != reference),
        "half written": _half_written(),
        "against a rule of the database": _against_rules(),
    }


def _half_written():
    """Sheets without exactly one message or one line that says who made them."""
    from django.db.models import Count, Q

    from triage.models import JobSheet

    made = Count("audit_entries", filter=Q(audit_entries__action="handed over"), distinct=True)
    counted = JobSheet.objects.annotate(messages=Count("deliveries", distinct=True), made=made)
    wanted = Q(firm__webhook_url="") | Q(messages=1)
    return counted.exclude(wanted & Q(made=1)).count()


def _against_rules():
    """Rows that a rule forbids, asked anew; and what the database's own look at its files finds."""
    from django.apps import apps
    from django.db import connection
    from django.db.models import CheckConstraint

    found = 0
    for model in apps.get_app_config("triage").get_models():
        rules = [rule for rule in model._meta.constraints if isinstance(rule, CheckConstraint)]
        found += sum(model.objects.filter(~rule.condition).count() for rule in rules)
    if connection.vendor == "sqlite":
        with connection.cursor() as cursor:
            found += cursor.execute("PRAGMA integrity_check").fetchone() != ("ok",)
            found += len(cursor.execute("PRAGMA foreign_key_check").fetchall())
    return found


if __name__ == "__main__":
    main()
