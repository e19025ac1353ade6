"""What a hand-over form carries in place of a session: which firm it is for, since when, and the key of this request.

In a frame on another site no cookie arrives, so nothing can be kept for the person between two pages. The field is
signed: a form is good for one firm and one day, and its key cannot be chosen by who sends it.
"""

import uuid
from datetime import timedelta

from django.core import signing
from django.utils.translation import gettext as _

from triage.check_pages.hand_over_form import STATE
from triage.jobsheet.errors import FieldProblem

SALT = "triage.household.hand_over"
OPEN_FOR = timedelta(days=1)


def new_state(firm: str) -> str:
    return signing.dumps([firm, uuid.uuid4().hex], salt=SALT)


def key_in(state: str, firm: str) -> str | None:
    """The request's key; None where the field is not ours, is for another firm or is too old."""
    try:
        wanted, key = signing.loads(state, salt=SALT, max_age=OPEN_FOR)
    except (signing.BadSignature, ValueError, TypeError):
        return None
    return str(key) if wanted == firm else None


def stale_problem() -> FieldProblem:
    sentence = _("This form was open for more than a day, so nothing was sent. Look through it and send it again.")
    return FieldProblem(STATE, sentence)
