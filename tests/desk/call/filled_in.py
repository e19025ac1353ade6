"""A hand-over as an agent fills it in, with the consent of this firm read out and agreed to."""

from datetime import date, timedelta

from triage.check_pages.hand_over_form import Sent
from triage.desk.call.booking import READ_PREFIX
from triage.desk.call.speech import line_id
from triage.jobsheet.consent import spoken_consent

CONTACT = {"name": "Alex Grey", "telephone": "020 7946 0000", "street": "3 Mill Lane", "postcode": "AB1 2CD"}


def fields_of(firm, **changes):
    soon = date.today() + timedelta(days=3)  # noqa: DTZ011  (the clock on the wall)
    read = {READ_PREFIX + line_id(line): "yes" for line in spoken_consent(firm)}
    return {**CONTACT, "day-1": str(soon), "part-1": "morning", "agreed": "yes", **read, **changes}


def filled_in(firm, **changes):
    return Sent(fields_of(firm, **changes))
