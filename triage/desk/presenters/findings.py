"""The form for what was found and fitted: the likeliest answers first, one touch each, the rest by a search box.

A browser's own list of suggestions does the searching, so it works without a script.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from django.http import QueryDict
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from triage.jobsheet.errors import Problem, Refused
from triage.jobsheet.outcomes import Findings
from triage.jobsheet.shapes import Summary
from triage.knowledge.library import library
from triage.models import JobSheet, Outcome
from triage.models.outcome import Barrier, Result

NOT_LISTED = "other-not-listed"
MINUTES = (15, 30, 45, 60, 90)
FIRST_VISIT = "first-visit"
LEFT = (
    (FIRST_VISIT, gettext_lazy("Fixed on this first visit")),
    (Result.FIXED.value, gettext_lazy("Fixed, on a later visit")),
    (Result.REPAIRABLE.value, gettext_lazy("Can be repaired, not finished")),
    (Result.END_OF_LIFE.value, gettext_lazy("Given up")),
    (Result.UNKNOWN.value, gettext_lazy("Not known")),
)


@dataclass(frozen=True, slots=True)
class Choice:
    value: str
    words: str
    note: str
    chosen: bool


@dataclass(frozen=True, slots=True)
class FindingsForm:
    found: tuple[Choice, ...]
    other_fault: str
    faults: tuple[str, ...]
    fitted: tuple[Choice, ...]
    other_parts: str
    parts: tuple[str, ...]
    left: tuple[Choice, ...]
    minutes: tuple[Choice, ...]
    other_minutes: str
    barriers: tuple[Choice, ...]
    problems: tuple[Problem, ...]


def findings_form(sheet: JobSheet, told: QueryDict, problems: Iterable[Problem] = ()) -> FindingsForm:
    """The form with what was chosen so far."""
    words = library().words(sheet.region)
    summary: Summary = sheet.summary
    found = told.getlist("found")
    fitted = told.getlist("fitted")
    kit = list(dict.fromkeys([part["name"] for part in summary["kit"]["parts"]] + fitted))
    return FindingsForm(
        found=tuple(_faults(summary, found, sheet.region)),
        other_fault=told.get("other_fault", ""),
        faults=tuple(f"{text.name} ({text.trade})" for text in words.faults.values()),
        fitted=tuple(Choice(part, part, "", part in fitted) for part in kit),
        other_parts=told.get("other_parts", ""),
        parts=tuple(words.parts.values()),
        left=tuple(Choice(value, str(name), "", told.get("left") == value) for value, name in LEFT),
        minutes=tuple(Choice(str(n), str(n), "", told.get("minutes") == str(n)) for n in MINUTES),
        other_minutes=told.get("other_minutes", ""),
        barriers=tuple(Choice(v, str(name), "", told.get("barrier", "") == v) for v, name in Barrier.choices),
        problems=tuple(problems),
    )


def _faults(summary: Summary, found: Sequence[str], region: str) -> Iterable[Choice]:
    """The causes as ranked, what looks alike, what comes along, what was chosen before, and "not in the list"."""
    texts = library().words(region).faults
    chances = {cause["fault"]: cause["chance_words"] for cause in summary["causes"]}
    others = [named["fault"] for named in (*summary["alike"], *summary["also_check"])]
    for fault in dict.fromkeys([*chances, *others, *found, NOT_LISTED]):
        if fault in texts:
            note = ". ".join(part for part in (texts[fault].trade, chances.get(fault, "")) if part)
            yield Choice(fault, texts[fault].name, note, fault in found)


def told_before(outcome: Outcome) -> QueryDict:
    """An outcome as the form that would write it."""
    told = QueryDict(mutable=True)
    told.setlist("found", outcome.found)
    told.setlist("fitted", outcome.fitted)
    told["left"] = FIRST_VISIT if outcome.fixed_first_visit else outcome.result
    told["minutes" if outcome.minutes in MINUTES else "other_minutes"] = str(outcome.minutes)
    told["barrier"] = outcome.barrier
    return told


def read_findings(sheet: JobSheet, told: QueryDict) -> Findings:
    """What was filled in. Raises Refused where it cannot be read."""
    left = told.get("left", "")
    if left not in dict(LEFT):
        raise Refused([Problem("left", _("Choose how the oven was left."))])
    found = told.getlist("found") + _searched(told.get("other_fault", ""), sheet.region)
    parts = [*told.getlist("fitted"), *told.get("other_parts", "").replace("\n", ";").split(";")]
    return Findings(
        found=tuple(dict.fromkeys(found)),
        fixed_first_visit=left == FIRST_VISIT,
        minutes=_minutes(told),
        result=Result.FIXED if left == FIRST_VISIT else left,
        barrier=told.get("barrier", "") if left == Result.END_OF_LIFE else "",
        fitted=tuple(part.strip() for part in parts if part.strip()),
    )


def _searched(typed: str, region: str) -> list[str]:
    """The fault that was typed or picked from the suggestions, by any part of its name."""
    wanted = " ".join(typed.split()).casefold()
    if not wanted:
        return []
    names = {fault: f"{text.name} ({text.trade})" for fault, text in library().words(region).faults.items()}
    exact = [fault for fault, name in names.items() if name.casefold() == wanted]
    near = exact or [fault for fault, name in names.items() if wanted in name.casefold()]
    if len(near) == 1:
        return near
    if not near:
        raise Refused([Problem("found", _("No fault is called that. Pick one of the suggestions, or “not listed”."))])
    first = "; ".join(names[fault] for fault in near[:4])
    sentence = _("That fits several faults: %(faults)s. Write more of the one you mean.")
    raise Refused([Problem("found", sentence % {"faults": first})])


def _minutes(told: QueryDict) -> int:
    typed = told.get("other_minutes", "").strip() or told.get("minutes", "")
    if typed.isascii() and typed.isdigit() and len(typed) < 6:
        return int(typed)
    raise Refused([Problem("minutes", _("Choose the minutes of work, or write them as a number such as 40."))])
