"""The form for what was found and fitted: the likeliest answers first, one touch each, the rest by a search box.

A browser's own list of suggestions does the searching, so it works without a script.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from django.http import QueryDict
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from triage.jobsheet.errors import FieldProblem, Refused
from triage.jobsheet.outcomes import OutcomeData
from triage.jobsheet.shapes import FullSummary
from triage.knowledge.library import library
from triage.models import JobSheet, Outcome
from triage.models.outcome import Barrier, RepairResult

NOT_LISTED = "other-not-listed"
MINUTES = (15, 30, 45, 60, 90)
FIRST_VISIT = "first-visit"
RESULT_CHOICES = (
    (FIRST_VISIT, gettext_lazy("Fixed on the first visit")),
    (RepairResult.FIXED.value, gettext_lazy("Fixed on a later visit")),
    (RepairResult.REPAIRABLE.value, gettext_lazy("Repairable, not finished")),
    (RepairResult.END_OF_LIFE.value, gettext_lazy("Beyond repair")),
    (RepairResult.UNKNOWN.value, gettext_lazy("Not known")),
)


@dataclass(frozen=True, slots=True)
class FormChoice:
    value: str
    label: str
    note: str
    chosen: bool


@dataclass(frozen=True, slots=True)
class OutcomeForm:
    found: tuple[FormChoice, ...]
    other_fault: str
    faults: tuple[str, ...]
    fitted: tuple[FormChoice, ...]
    other_parts: str
    parts: tuple[str, ...]
    result: tuple[FormChoice, ...]
    minutes: tuple[FormChoice, ...]
    other_minutes: str
    barriers: tuple[FormChoice, ...]
    problems: tuple[FieldProblem, ...]


def outcome_form(sheet: JobSheet, data: QueryDict, problems: Iterable[FieldProblem] = ()) -> OutcomeForm:
    """The form with what was chosen so far."""
    texts = library().texts_for(sheet.region)
    summary: FullSummary = sheet.summary
    found = data.getlist("found")
    fitted = data.getlist("fitted")
    kit = list(dict.fromkeys([part["name"] for part in summary["kit"]["parts"]] + fitted))
    return OutcomeForm(
        found=tuple(_faults(summary, found, sheet.region)),
        other_fault=data.get("other_fault", ""),
        faults=tuple(f"{text.name} ({text.trade})" for text in texts.faults.values()),
        fitted=tuple(FormChoice(part, part, "", part in fitted) for part in kit),
        other_parts=data.get("other_parts", ""),
        parts=tuple(texts.parts.values()),
        result=tuple(FormChoice(value, str(name), "", data.get("result") == value) for value, name in RESULT_CHOICES),
        minutes=tuple(FormChoice(str(n), str(n), "", data.get("minutes") == str(n)) for n in MINUTES),
        other_minutes=data.get("other_minutes", ""),
        barriers=tuple(FormChoice(v, str(name), "", data.get("barrier", "") == v) for v, name in Barrier.choices),
        problems=tuple(problems),
    )


def _faults(summary: FullSummary, found: Sequence[str], region: str) -> Iterable[FormChoice]:
    """The causes as ranked, what looks alike, what comes along, what was chosen before, and "not in the list"."""
    texts = library().texts_for(region).faults
    chances = {cause["fault"]: cause["probability_text"] for cause in summary["causes"]}
    others = [named["fault"] for named in (*summary["indistinguishable"], *summary["related"])]
    for fault in dict.fromkeys([*chances, *others, *found, NOT_LISTED]):
        if fault in texts:
            note = ". ".join(part for part in (texts[fault].trade, chances.get(fault, "")) if part)
            yield FormChoice(fault, texts[fault].name, note, fault in found)


def initial_data(outcome: Outcome) -> QueryDict:
    """An outcome as the form that would write it."""
    data = QueryDict(mutable=True)
    data.setlist("found", outcome.found)
    data.setlist("fitted", outcome.fitted)
    data["result"] = FIRST_VISIT if outcome.fixed_first_visit else outcome.result
    data["minutes" if outcome.minutes in MINUTES else "other_minutes"] = str(outcome.minutes)
    data["barrier"] = outcome.barrier
    return data


def parse_outcome_form(sheet: JobSheet, data: QueryDict) -> OutcomeData:
    """What was filled in. Raises Refused where it cannot be read."""
    result = data.get("result", "")
    if result not in dict(RESULT_CHOICES):
        raise Refused([FieldProblem("result", _("Choose a result."))])
    found = data.getlist("found") + _faults_named(data.get("other_fault", ""), sheet.region)
    parts = [*data.getlist("fitted"), *data.get("other_parts", "").replace("\n", ";").split(";")]
    return OutcomeData(
        found=tuple(dict.fromkeys(found)),
        fixed_first_visit=result == FIRST_VISIT,
        minutes=_minutes(data),
        result=RepairResult.FIXED if result == FIRST_VISIT else result,
        barrier=data.get("barrier", "") if result == RepairResult.END_OF_LIFE else "",
        fitted=tuple(part.strip() for part in parts if part.strip()),
    )


def _faults_named(typed: str, region: str) -> list[str]:
    """The fault that was typed or picked from the suggestions, by any part of its name."""
    wanted = " ".join(typed.split()).casefold()
    if not wanted:
        return []
    names = {fault: f"{text.name} ({text.trade})" for fault, text in library().texts_for(region).faults.items()}
    exact = [fault for fault, name in names.items() if name.casefold() == wanted]
    matches = exact or [fault for fault, name in names.items() if wanted in name.casefold()]
    if len(matches) == 1:
        return matches
    if not matches:
        raise Refused([FieldProblem("found", _("No fault has that name. Pick a suggestion, or “not listed”."))])
    first = "; ".join(names[fault] for fault in matches[:4])
    sentence = _("Several faults match: %(faults)s. Type more of the name.")
    raise Refused([FieldProblem("found", sentence % {"faults": first})])


def _minutes(data: QueryDict) -> int:
    typed = data.get("other_minutes", "").strip() or data.get("minutes", "")
    if typed.isascii() and typed.isdigit() and len(typed) < 6:
        return int(typed)
    raise Refused([FieldProblem("minutes", _("Choose the working time, or enter the minutes as a number such as 40."))])
