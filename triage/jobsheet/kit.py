"""What to bring: the parts worth carrying, what each adds, and the chance that they are enough."""

from triage.engine.check import Check
from triage.engine.enums import PerformedBy
from triage.engine.kit import kit_for
from triage.jobsheet.shapes import SheetKit, SheetKitPart
from triage.jobsheet.wording import short_chance
from triage.knowledge.texts import Texts

# Whose visits take parts; the others' jobs are listed with what a technician would bring.
CARRYING = (PerformedBy.TECHNICIAN, PerformedBy.ELECTRICIAN)
MIN_GAIN = 0.005


def kit_of(check: Check, texts: Texts, leading_fault: str) -> SheetKit:
    """The kit for the person the likeliest cause calls for; what hardly adds anything stays at home."""
    performer = check.pack.faults[leading_fault].performed_by
    kit = kit_for(check.belief, performer if performer in CARRYING else CARRYING[0])
    worthwhile = [carried for carried in kit.parts if carried.gain >= MIN_GAIN]
    return SheetKit(
        parts=[SheetKitPart(part=c.part, name=texts.parts[c.part], gain=round(c.gain, 4)) for c in worthwhile],
        first_visit_probability=round(kit.completion_probability, 4),
        first_visit_text=short_chance(kit.completion_probability),
        max_probability=round(kit.max_probability, 4),
    )
