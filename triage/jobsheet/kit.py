"""What to bring: the parts worth carrying, what each adds, and the chance that they are enough."""

from triage.engine.check import Check
from triage.engine.enums import PerformedBy
from triage.engine.kit import kit_for
from triage.jobsheet.shapes import Carried, Kit
from triage.jobsheet.wording import short_chance
from triage.knowledge.texts import Texts

# Whose visits take parts; the others' jobs are listed with what a technician would bring.
CARRYING = (PerformedBy.TECHNICIAN, PerformedBy.ELECTRICIAN)
LEAST_GAIN = 0.005


def kit_of(check: Check, texts: Texts, leading_fault: str) -> Kit:
    """The kit for the person the likeliest cause calls for; what hardly adds anything stays at home."""
    who = check.pack.faults[leading_fault].performed_by
    kit = kit_for(check.belief, who if who in CARRYING else CARRYING[0])
    worth = [carried for carried in kit.parts if carried.gain >= LEAST_GAIN]
    return Kit(
        parts=[Carried(part=c.part, name=texts.parts[c.part], gain=round(c.gain, 4)) for c in worth],
        first_visit_chance=round(kit.completion_probability, 4),
        first_visit_words=short_chance(kit.completion_probability),
        at_best=round(kit.max_probability, 4),
    )
