"""Outcomes from a YAML file, read strictly: every mistake at once, with file, line and remedy.

    outcomes:
      - reference: visit-0001
        firm: north-street
        region: gb-eng
        day: '2026-02-03'
        answers: {complaint: not-hot, danger: none, heats: none}
        found: [fan-element-open]
        fitted: [fan-element]
        first_visit: true

`firm` and `fitted` may be left out. A question that was retired since is passed over, as it is on any old address. A
reading stands as it does in an address, in quotes.
"""

from collections.abc import Iterable, Sequence
from datetime import date
from pathlib import Path

from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN, Pack
from triage.engine.readings.evidence import invalid_reason
from triage.knowledge.entry import Entry
from triage.knowledge.problems import PackProblem, PackProblems
from triage.knowledge.yaml_reader import read_yaml
from triage.learning.outcome import Outcome


def read_outcomes(paths: Sequence[Path], pack: Pack, regions: Iterable[str]) -> tuple[Outcome, ...]:
    """The outcomes of all files, in order. Raises PackProblems with everything that is wrong in any of them."""
    problems: list[PackProblem] = []
    known_regions = list(regions)
    outcomes: dict[str, Outcome] = {}
    for path in paths:
        fields = read_yaml(path, path.name, problems)
        if fields is None:
            continue
        top = Entry(path.name, "file", fields, problems)
        for item in top.items("outcomes"):
            outcome = _outcome(item, pack, known_regions)
            if outcome.reference in outcomes:
                item.report("reference", f"{outcome.reference!r} stands twice.", "Tell each visit once.")
            outcomes[outcome.reference] = outcome
        if fields.get("outcomes") == []:
            top.report("outcomes", "holds no outcome.", "List one at least.")
        top.close()
    if problems:
        raise PackProblems(problems)
    return tuple(outcomes.values())


def _outcome(item: Entry, pack: Pack, regions: list[str]) -> Outcome:
    outcome = Outcome(
        reference=item.text("reference"),
        region=item.choice("region", regions),
        answers=_answers(item, pack),
        found=_found(item, pack),
        day=_day(item),
        first_visit=item.flag("first_visit", False),
        fitted=item.ids("fitted", pack.parts, ()),
        firm=item.text("firm") if item.has("firm") else "",
    )
    if not item.has("first_visit"):
        item.report("first_visit", "`first_visit` is missing.", "Write true or false.")
    if outcome.firm:
        item.is_id("firm", outcome.firm)
    item.close()
    return outcome


def _answers(item: Entry, pack: Pack) -> dict[str, str]:
    options = {o.id: [*o.options, CANT_TELL] for o in pack.observations.values()}
    options |= {SCREEN: [NONE_OF_THESE]}
    answers = {}
    for name, below in item.names("answers", required=True):
        if name in pack.retired:
            below.used.add(name)
        elif below.is_known(name, name, list(options)):
            said = below.fields[name]
            is_reading = (
                isinstance(said, str) and name != SCREEN and invalid_reason(pack.observations[name], said) is None
            )
            answers[name] = below.text(name) if is_reading else below.choice(name, options[name])
    return answers


def _found(item: Entry, pack: Pack) -> tuple[str, ...]:
    found = item.ids("found", pack.faults)
    if item.fields.get("found") == []:
        item.report("found", "names no fault.", "Name what was found; `other-not-listed` stands for anything else.")
    return found


def _day(item: Entry) -> str:
    text = item.text("day")
    try:
        date.fromisoformat(text)
    except ValueError:
        if text:
            item.report("day", f"is no date: {text!r}.", "Write it as '2026-03-01'.")
    return text
