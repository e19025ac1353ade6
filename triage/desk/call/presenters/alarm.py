"""The band across the page: there from the moment danger was recorded, with the words to say and the number to give."""

from triage.check_pages.presenters.emergency import emergency_page
from triage.check_pages.presenters.isolation import instruction_text
from triage.check_pages.presenters.phone_numbers import emergency_call
from triage.desk.call.open_call import Call
from triage.desk.call.view_models import Alarm
from triage.engine import Emergency


def alarm_of(call: Call) -> Alarm | None:
    """Danger that ends the questions, else the gravest caution, else nothing."""
    check_request = call.check_request
    if isinstance(check_request.step, Emergency):
        page = emergency_page(check_request, check_request.step)
        numbers = page.phone_numbers or [emergency_call(check_request.region)]
        return Alarm(page.signal, page.heading, instruction_text(page.steps[0]), numbers, stops=True)
    flags = check_request.check.flags
    if not flags:
        return None
    text = check_request.texts.flags[flags[0].id]
    return Alarm(flags[0].signal, text.heading, text.first[0], [], stops=False)
