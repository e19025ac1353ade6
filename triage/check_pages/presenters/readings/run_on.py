"""The run-on test: when the fan was last heard and when it was first found still, in minutes after switch-off."""

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.drawings.minutes_line import Stretch, minutes_line
from triage.check_pages.presenters.readings.form_input import FormInput
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest
from triage.engine.readings.encoding import encode
from triage.engine.readings.run_on import ENDLESS_MINUTES, RUN_ON_FIELDS, read_run_on
from triage.jobsheet.reading_text import run_on_text

USUAL, LONG, SHOWN = 30.0, 60.0, 90.0
MAX_MINUTES = 240.0


def write_run_on(_request: CheckRequest, found: FormInput) -> str:
    """Where only the end is known, it was heard until then; a cold oven needs no time."""
    figures = found.figures
    if "heard" not in figures and "stopped" in figures:
        figures = {**figures, "heard": figures["stopped"]}
    if "heard" not in figures and "cold" in figures:
        figures = {**figures, "heard": "0"}
    return encode(RUN_ON_FIELDS, figures)


def run_on_drawing(_where: HasRegion, text: str) -> Drawing:
    found = read_run_on(text)
    endless = found.minutes.value >= ENDLESS_MINUTES
    value, unsure = (SHOWN if endless else found.minutes.value), 2.0 * found.minutes.uncertainty
    length = min(max(SHOWN, value + unsure), MAX_MINUTES)
    stretches = [
        Stretch(0.0, USUAL, "plate", "usual"),
        Stretch(USUAL, LONG, "long", "long"),
        Stretch(LONG, length, "never", "too-long"),
    ]
    seen = (value if found.running else max(value - unsure, 0.0), value + unsure, found.running)
    facts = {
        "kind": "run-on",
        "found": run_on_text(text),
        "silent": not found.running and not found.minutes.value,
        "still_running": found.running and not endless,
    }
    return minutes_line(length, stretches, seen, "minutes-after-switch-off", facts)
