"""An earlier job sheet of the same firm, for who calls again: found by its reference, and what of it still holds.

What is another firm's, was erased or never was is the same NotFound, and an agent may try only so often, so that
nobody learns by trying which references exist. Of its answers only what still holds is taken over: the danger signs are
asked anew, and so is whether it is cold and off, because that was true of another day.
"""

from collections.abc import Mapping

from triage.check_pages.presenters.answers import DID
from triage.engine import SCREEN, parse_answers
from triage.engine.pack import Pack
from triage.jobsheet.access import NotFound, open_as_member
from triage.models import JobSheet, Member
from triage.web.rate_limit import Allowance, Policy, count_request

LOOKUP_POLICY = Policy("earlier-sheets", quota=30, seconds=600)


def count_lookup(member: Member) -> Allowance:
    return count_request(LOOKUP_POLICY, f"member {member.pk}")


def find_sheet(member: Member, typed: str) -> JobSheet:
    """The firm's job sheet of this reference. Raises NotFound; the look leaves its audit line."""
    sheet = open_as_member(member, typed)
    if sheet.erased:
        raise NotFound
    return sheet


def reusable_answers(pack: Pack, sheet: JobSheet, current: Mapping[str, str]) -> dict[str, str]:
    """The sheet's answers a new call may begin with, beside those told in it already."""
    gates = {gate for task in pack.tasks.values() for gate in task.gates}
    reusable = [
        (name, answer)
        for name, answer in sheet.answers
        if name != SCREEN and name not in gates and not (name.startswith(DID) and answer == "fixed")
    ]
    both = parse_answers(
        pack, [*current.items(), *((name, answer) for name, answer in reusable if name not in current)]
    ).answers
    return {name: answer for name, answer in both.items() if name not in current}
