"""The fault bench works on a small scale, on SQLite, and its books find whatever would be wrong."""

import pytest

from tests.bench.environment import SQLITE, running_environment
from tests.bench.faults import run, show
from tests.bench.injected_faults import DELIVERER_KILLED, WEB_KILLED, receiver_in
from tests.bench.ledger import judged
from tests.bench.server import built_static_files
from tests.firm_builders import make_firm, make_job_sheet
from triage.models import AuditEntry, Delivery

FEW = 12


def test_a_few_hand_overs_survive_killed_workers_and_a_receiver_that_forgets_to_say_so(capsys):
    faults = [WEB_KILLED, receiver_in("storing it and closing early"), DELIVERER_KILLED]
    with built_static_files(), running_environment(SQLITE, own_disk=False, firms=3) as environment:
        verdict = run(environment, faults, FEW, lasts=1, checks=20, hurry=True)
    show(SQLITE, verdict, 1)
    assert verdict.wrong == {}, environment.said()
    assert FEW <= len(verdict.flow.acknowledged) == verdict.books["sheets"] == len(environment.receiver.arrived)
    assert verdict.flow.by_form >= 1
    assert verdict.starts["deliverer"] >= 1
    assert "All is well" in capsys.readouterr().out


@pytest.mark.django_db
def test_the_ledger_finds_what_was_lost_doubled_or_half_written():
    firm = make_firm(email="")
    sheets = [make_job_sheet(firm, idempotency_key=f"key-number-{number}-of-two") for number in (1, 2)]
    Delivery.objects.update(state="sent")
    arrived = dict(Delivery.objects.values_list("message_id", "sheet__reference"))
    acknowledged = {sheet.idempotency_key: sheet.reference for sheet in sheets}

    def wrong(acknowledged, arrived):
        return {name: count for name, count in judged(acknowledged, arrived).items() if count} | {
            "sheets": 2,
            "sent": 2,
        }

    right, (key, _) = {"sheets": 2, "sent": 2}, acknowledged
    assert wrong(acknowledged, arrived) == right
    assert wrong({**acknowledged, "another": "AAAAA-BBBBB"}, arrived) == {**right, "acknowledged but not there": 1}
    renamed = dict.fromkeys(acknowledged, "AAAAA-BBBBB")
    assert wrong(renamed, arrived) == {**right, "acknowledged under another reference": 2}
    assert wrong({key: acknowledged[key]}, arrived) == {**right, "there but never acknowledged": 1}
    first, second = arrived
    swapped = wrong(acknowledged, {first: arrived[second], second: arrived[second]})
    assert swapped == {**right, "arrived about another sheet": 1}
    assert wrong(acknowledged, {first: arrived[first]}) == {**right, "sent but never arrived": 1}
    AuditEntry.objects.all().delete()
    assert wrong(acknowledged, arrived) == {**right, "half written": 2}
    make_job_sheet(make_firm(email="", webhook_url=""), idempotency_key=key)
    assert wrong(acknowledged, arrived)["there twice"] == 1
