"""What every page of a call shows around its own: whose call it is, where, and the number for an emergency."""

from typing import Any

from triage.check_pages.presenters.numbers import emergency_call
from triage.desk.call.open_call import Call


def around(call: Call) -> dict[str, Any]:
    return {
        "firm": call.firm,
        "place": call.check_request.region.name,
        "emergency": emergency_call(call.check_request.region),
    }
