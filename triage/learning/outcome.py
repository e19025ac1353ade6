"""What a repairer found and fitted at the end of one check."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from triage.engine.answers import parse_answers
from triage.engine.model import Model
from triage.engine.pack import Pack


@dataclass(frozen=True, slots=True, eq=False)
class Outcome:
    """One visit. `answers` are the check's, as its address holds them; `found` the fault ids, the one the job is named
    after first; `fitted` the parts; `day` as 2026-03-01; `firm` empty where it is not said."""

    reference: str
    region: str
    answers: Mapping[str, str]
    found: tuple[str, ...]
    day: str
    first_visit: bool
    fitted: tuple[str, ...] = ()
    firm: str = ""


def usable_answers(pack: Pack, outcome: Outcome) -> Mapping[str, str]:
    """What of the check still holds: a pack may have moved on since."""
    return parse_answers(pack, outcome.answers.items()).answers


def hypothesis_found(model: Model, found: Iterable[str]) -> int | None:
    """The place of the hypothesis that is exactly what was found, if the pack has it."""
    wanted = frozenset(found)
    return next((h for h, known in enumerate(model.hypotheses) if frozenset(known.faults) == wanted), None)


def job_found(pack: Pack, found: tuple[str, ...]) -> str:
    """The fault the job is named after: the pack's own order for a pair it knows, else the one named first."""
    together = frozenset(found)
    return next((pair.cause for pair in pack.fault_pairs if {pair.cause, pair.effect} == together), found[0])
