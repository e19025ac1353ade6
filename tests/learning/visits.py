"""Visits for the tests of learning: made by hand on the small pack, or drawn from the real one."""

from dataclasses import replace
from functools import cache

from tests.builders import ANYWHERE
from triage.authoring.simulated_users import draw_user
from triage.engine.model import compile_model
from triage.knowledge.library import load_library
from triage.knowledge.overlay import observed_by_technician
from triage.learning.outcome import Outcome

SMALL_REGIONS = {ANYWHERE.id: ANYWHERE}
ANSWERS_EACH = 12


def visit(found, answers=None, reference="visit-1", **changes):
    """One visit on the small pack."""
    found = (found,) if isinstance(found, str) else found
    return replace(Outcome(reference, ANYWHERE.id, answers or {}, found, "2026-03-01", True), **changes)


def visits(*found):
    return [visit(fault, reference=f"visit-{number}") for number, fault in enumerate(found)]


@cache
def written_library():
    """The real pack as its authors wrote it."""
    return load_library(learnt=False)


@cache
def real_regions():
    return {code: profile.region for code, profile in written_library().regions.items()}


def drawn_visits(pack, count, dice, region="gb-eng", tag="visit"):
    """Visits of a van to ovens as common as `pack` says: the start page, the danger page and some questions."""
    model = compile_model(observed_by_technician(pack), real_regions()[region])
    asked = [o.id for o in pack.observations.values() if o.reports and not o.task]
    drawn = []
    for number in range(count):
        household = draw_user(model, dice)
        answers = dict(household.opening_answers())
        answers |= {name: household.answer(name) for name in dice.sample(asked, ANSWERS_EACH)}
        drawn.append(Outcome(f"{tag}-{number:04d}", region, answers, household.faults, "2026-03-01", True))
    return drawn
