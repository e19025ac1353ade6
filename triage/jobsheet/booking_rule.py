"""Whether a visit may be booked with a check: one rule, whichever way the request comes.

The one writer of job sheets enforces it (`actions.create_job_sheet`). Pages, calls and the API ask it only to offer a
booking or to say in words of their own why there is none.
"""

from enum import StrEnum

from triage.engine import SCREEN, Band, Check, Emergency, OutOfScope, Question, Result
from triage.engine.enums import PerformedBy
from triage.engine.safety import must_evacuate
from triage.jobsheet.wording import DID


class BookingRefusal(StrEnum):
    """Why no visit can be booked with a check."""

    EVACUATE_FIRST = "evacuate-first"  # people have to get out and call for help from outside
    NOTHING_ANSWERED = "nothing-answered"
    OUT_OF_SCOPE = "out-of-scope"  # by the answers it is no electric oven
    DANGER_SIGNS_OPEN = "danger-signs-open"  # nobody was asked yet whether there is danger
    SOLVED = "solved"  # something the person did put it right
    NORMAL = "normal"  # it works as it should
    NETWORK_OPERATOR = "network-operator"  # the likeliest cause is the electricity network's to put right


def booking_refusal(check: Check) -> BookingRefusal | None:
    """The reason why this check cannot be booked, or None where it can."""
    match check.step:
        case Emergency():
            return BookingRefusal.EVACUATE_FIRST if must_evacuate(check.flags) else None
        case OutOfScope():
            return BookingRefusal.OUT_OF_SCOPE
        case Question():
            return _too_early(check)
        case Result() as result:
            return _needless(check, result)


def is_solved(check: Check, result: Result) -> bool:
    """Whether a task put it right; never while a caution or a grave band stands."""
    fixed = any(name.startswith(DID) and answer == "fixed" for name, answer in check.answers.items())
    return fixed and not result.cautions and result.verdict.band in (Band.NORMAL, Band.SELF_CHECK)


def _too_early(check: Check) -> BookingRefusal | None:
    """A firm's telephone menu may ask less than all there is to ask, and a sheet says that questions were left; but
    the danger signs come first for everybody."""
    if not check.answers:
        return BookingRefusal.NOTHING_ANSWERED
    return None if SCREEN in check.answers else BookingRefusal.DANGER_SIGNS_OPEN


def _needless(check: Check, result: Result) -> BookingRefusal | None:
    """Why a visit of the firm would be for nothing."""
    if is_solved(check, result):
        return BookingRefusal.SOLVED
    if result.verdict.band is Band.NORMAL:
        return BookingRefusal.NORMAL
    leading = check.pack.faults[result.verdict.causes[0].fault]
    return BookingRefusal.NETWORK_OPERATOR if leading.performed_by == PerformedBy.NETWORK_OPERATOR else None
