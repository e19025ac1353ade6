"""How many hand-overs may come from one address, so that nobody buries a firm in invented ones.

A whole street may share one address, so the limit is wide; a firm's own telephone agents use the API with a key.
"""

from django.http import HttpRequest
from django.utils.translation import ngettext

from triage.conf import BOOKING_RATE_LIMIT
from triage.jobsheet.errors import FieldProblem
from triage.web.client_address import client_address
from triage.web.rate_limit import Allowance, Policy, count_request, network_of

SECONDS = 600
TOO_MANY = 429


def count_hand_over(request: HttpRequest) -> Allowance:
    policy = Policy("hand-over", quota=int(BOOKING_RATE_LIMIT.value()), seconds=SECONDS)
    return count_request(policy, network_of(client_address(request)))


def wait_problem(allowance: Allowance) -> FieldProblem:
    minutes = -(-allowance.reset_after // 60)
    sentence = ngettext(
        "Too many forms came from your network in a short time, so nothing was sent. What you typed is still here:"
        " send it again in %(minutes)s minute, or telephone the firm.",
        "Too many forms came from your network in a short time, so nothing was sent. What you typed is still here:"
        " send it again in %(minutes)s minutes, or telephone the firm.",
        minutes,
    )
    return FieldProblem("", sentence % {"minutes": minutes})
